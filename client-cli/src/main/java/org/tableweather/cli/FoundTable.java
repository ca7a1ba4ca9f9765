package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** Rows of a server's list as a table for people; the rest of each row is in the JSON and the CSV. */
final class FoundTable {
    private final List<String> fields;
    private final TextTable table;
    private long rows;

    private FoundTable(List<String> fields, String... headings) {
        this.fields = fields;
        this.table = TextTable.of(headings);
    }

    static FoundTable of(FindCommand.What what) {
        return switch (what) {
            case ROOMS ->
                new FoundTable(
                        List.of("key", "name", "country", "sessions", "trials", "invented"),
                        "room",
                        "name",
                        "country",
                        "sessions",
                        "attempts",
                        "invented");
            case SESSIONS ->
                new FoundTable(
                        List.of("key", "startedAt", "rhMinPct", "rhMaxPct", "tempMinC", "tempMaxC", "trials", "shots"),
                        "session",
                        "started",
                        "RH min %",
                        "RH max %",
                        "min C",
                        "max C",
                        "attempts",
                        "shots");
            case SUMMARY -> throw new IllegalArgumentException("a summary is no list of rows");
            case QUERIES ->
                new FoundTable(
                        List.of("name", "version", "owner", "savedAt", "filter"),
                        "query",
                        "version",
                        "owner",
                        "saved",
                        "filter");
            case TRIALS ->
                new FoundTable(
                        List.of(
                                "sessionKey",
                                "trial",
                                "startedAt",
                                "shot",
                                "climateRhPct",
                                "climateTempC",
                                "reboundAngleDeg",
                                "finalReboundAngleDeg",
                                "landingOffsetDia",
                                "made"),
                        "session",
                        "attempt",
                        "started",
                        "shot",
                        "RH %",
                        "temp C",
                        "rebound deg",
                        "final deg",
                        "offset dia",
                        "made");
        };
    }

    void add(JsonNode row) {
        table.row(fields.stream().map(field -> cell(row.path(field))).toArray(String[]::new));
        rows++;
    }

    private static String cell(JsonNode value) {
        if (value.isMissingNode() || value.isNull()) {
            return "";
        }
        if (value.isObject()) {
            return value.properties().stream()
                    .map(field -> field.getKey() + "=" + field.getValue().asText())
                    .collect(Collectors.joining(" "));
        }
        if (value.isArray()) {
            return StreamSupport.stream(value.spliterator(), false)
                    .map(one -> one.isObject() ? one.path("shot").asText() : one.asText())
                    .collect(Collectors.joining(" "));
        }
        if (value.isDouble()) {
            return String.format(Locale.ROOT, "%.2f", value.asDouble());
        }
        return value.asText();
    }

    long rows() {
        return rows;
    }

    String text() {
        return rows == 0 ? "nothing found\n" : table.text();
    }
}
