package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** A server's counts as a person reads them; the rest is in the JSON. */
final class SummaryText {
    /** Where a server counts. */
    static final String PATH = "/api/v1/trials/summary";

    private static final int SHOWN = 10;

    private SummaryText() {}

    static String of(JsonNode summary) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%,d trials in %,d sessions of %,d rooms from %,d contributors%n",
                summary.path("trials").asLong(),
                summary.path("sessions").asLong(),
                summary.path("rooms").asLong(),
                summary.path("contributors").asLong()));
        counts(text, "shot", summary.path("shots"));
        counts(text, "kind", summary.path("kinds"));
        counts(text, "room", summary.path("byRoom"));
        counts(text, "country", summary.path("countries"));
        bins(text, "RH %", summary.path("relativeHumidity"));
        bins(text, "temp C", summary.path("temperature"));
        responses(text, summary);
        return text.toString();
    }

    /** Names of counts with commas between. */
    static String names(JsonNode counts) {
        return StreamSupport.stream(counts.spliterator(), false)
                .map(count -> count.path("name").asText())
                .collect(Collectors.joining(", "));
    }

    private static void counts(StringBuilder text, String heading, JsonNode counts) {
        if (counts.isEmpty()) {
            return;
        }
        TextTable table = TextTable.of(heading, "trials", "sessions");
        for (int i = 0; i < Math.min(SHOWN, counts.size()); i++) {
            JsonNode count = counts.get(i);
            table.row(
                    count.path("name").asText(),
                    count.path("trials").asText(),
                    count.path("sessions").asText());
        }
        text.append('\n').append(table.text());
        if (counts.size() > SHOWN) {
            text.append("... and ").append(counts.size() - SHOWN).append(" more: --json\n");
        }
    }

    private static void bins(StringBuilder text, String heading, JsonNode bins) {
        if (bins.isEmpty()) {
            return;
        }
        TextTable table = TextTable.of(heading, "trials", "sessions");
        for (JsonNode bin : bins) {
            String from = String.format(
                    Locale.ROOT,
                    "%.0f to %.0f",
                    bin.path("from").asDouble(),
                    bin.path("to").asDouble());
            table.row(from, bin.path("trials").asText(), bin.path("sessions").asText());
        }
        text.append('\n').append(table.text());
    }

    private static void responses(StringBuilder text, JsonNode summary) {
        JsonNode responses = summary.path("responses");
        if (responses.isEmpty()) {
            return;
        }
        TextTable table = TextTable.of("shot", "response", "5 %", "25 %", "50 %", "75 %", "95 %");
        for (int i = 0; i < Math.min(SHOWN, responses.size()); i++) {
            JsonNode quantiles = responses.get(i).path("quantiles");
            table.row(
                    responses.get(i).path("shot").asText(),
                    responses.get(i).path("response").asText(),
                    fixed(quantiles.path("0.05")),
                    fixed(quantiles.path("0.25")),
                    fixed(quantiles.path("0.5")),
                    fixed(quantiles.path("0.75")),
                    fixed(quantiles.path("0.95")));
        }
        text.append(String.format(
                Locale.ROOT,
                "%nquantiles from %,d trials%n",
                summary.path("responsesFrom").asLong()));
        text.append(table.text());
        if (responses.size() > SHOWN) {
            text.append("... and ").append(responses.size() - SHOWN).append(" more: --json\n");
        }
    }

    private static String fixed(JsonNode number) {
        return String.format(Locale.ROOT, "%.2f", number.asDouble());
    }
}
