package org.tableweather.server.contribution;

import com.fasterxml.jackson.databind.JsonNode;

/**
 * A finding of the checks as a page shows it.
 *
 * @param severity refuse, warn or note
 * @param file where it is
 * @param row as a spreadsheet counts; empty for the file as a whole
 * @param column CSV column or JSON pointer; empty for the row as a whole
 * @param value what stands there; empty when nothing
 * @param message what is wrong
 * @param bound that it breaks
 * @param remedy what to do
 * @param check its id
 * @param reference key of the source
 */
record FindingView(
        String severity,
        String file,
        String row,
        String column,
        String value,
        String message,
        String bound,
        String remedy,
        String check,
        String reference) {

    /**
     * A finding of a report.
     *
     * @param finding as JSON
     */
    static FindingView of(JsonNode finding) {
        return new FindingView(
                finding.path("severity").asText(),
                finding.path("file").asText(),
                stated(finding, "row"),
                stated(finding, "column"),
                stated(finding, "value"),
                finding.path("message").asText(),
                finding.path("bound").asText(),
                finding.path("remedy").asText(),
                finding.path("check").asText(),
                finding.path("reference").asText());
    }

    /** Where it is, in words: {@code trials.csv, row 12, rh_pct = 430}. */
    public String place() {
        return file
                + (row.isEmpty() ? "" : ", row " + row)
                + (column.isEmpty() ? "" : ", " + column)
                + (value.isEmpty() ? "" : (column.isEmpty() ? ": " : " = ") + value);
    }

    private static String stated(JsonNode finding, String name) {
        JsonNode value = finding.path(name);
        return value.isNull() ? "" : value.asText("");
    }
}
