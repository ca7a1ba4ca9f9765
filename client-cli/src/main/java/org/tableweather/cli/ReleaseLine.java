package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;

/** A release of a server in one line. */
final class ReleaseLine {
    private ReleaseLine() {}

    static String of(JsonNode release) {
        String state = release.path("state").asText();
        String head = String.format(
                Locale.ROOT,
                "release %d, %s, %s: ",
                release.path("number").asInt(),
                release.path("date").asText(),
                release.path("title").asText());
        if (!state.equals("frozen")) {
            return head + state;
        }
        JsonNode totals = release.path("totals");
        return head
                + String.format(
                        Locale.ROOT,
                        "%,d trials in %,d sessions of %,d rooms; manifest sha256:%s",
                        totals.path("trials").asLong(),
                        totals.path("sessions").asLong(),
                        totals.path("rooms").asLong(),
                        release.path("manifestSha256").asText());
    }
}
