package org.tableweather.server.contribution;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.tableweather.schema.check.Severity;
import org.tableweather.server.web.Words;

/**
 * A check report as a page shows it.
 *
 * @param summary what was found, in one sentence
 * @param findings by severity, gravest first
 * @param more what was counted but is not listed, by check
 * @param files how each file was understood
 * @param cautions what the climates of the sessions call for
 */
record ReportView(
        String summary, List<Line> findings, List<String> more, List<List<String>> files, List<Advice> cautions) {
    private static final ObjectMapper JSON = new ObjectMapper();

    ReportView {
        findings = List.copyOf(findings);
        more = List.copyOf(more);
        files = List.copyOf(files);
        cautions = List.copyOf(cautions);
    }

    /**
     * One finding.
     *
     * @param severity {@code refuse}, {@code warn} or {@code note}
     * @param check its id
     * @param place file, row and column
     * @param message what is wrong
     * @param value what stands there; a dash for nothing
     * @param bound that it breaks
     * @param remedy what to do
     * @param reference key of the source
     */
    record Line(
            String severity,
            String check,
            String place,
            String message,
            String value,
            String bound,
            String remedy,
            String reference) {}

    /**
     * One caution.
     *
     * @param level how grave
     * @param advice what to do
     * @param sessions that call for it
     * @param reference key of the source
     */
    record Advice(String level, String advice, String sessions, String reference) {}

    /**
     * A report from its stored text.
     *
     * @param report JSON
     */
    static ReportView of(String report) {
        JsonNode json = read(report);
        List<Line> findings = findings(json, any -> true);
        return new ReportView(
                summary(json),
                findings,
                more(json, findings),
                fields(json.path("dialects"))
                        .map(name ->
                                List.of(name, json.path("dialects").path(name).asText()))
                        .toList(),
                elements(json.path("cautions")).map(ReportView::advice).toList());
    }

    /** The findings of a report that are wanted. */
    static List<Line> findings(JsonNode report, Predicate<JsonNode> wanted) {
        return elements(report.path("findings"))
                .filter(wanted)
                .map(ReportView::line)
                .toList();
    }

    /** A report as JSON. */
    static JsonNode read(String report) {
        try {
            return JSON.readTree(report);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a stored report is JSON", e);
        }
    }

    private static String summary(JsonNode json) {
        List<String> parts = new ArrayList<>();
        for (Severity severity : Severity.values()) {
            long listed = elements(json.path("findings"))
                    .filter(one -> one.path("severity").asText().equals(severity.schemaName()))
                    .count();
            if (listed > 0) {
                parts.add(Words.count(listed) + " " + severity.schemaName());
            }
        }
        String looked = Words.counted(json.path("trials").asLong(), "attempt") + " in "
                + Words.counted(json.path("sessions").asLong(), "session") + " were looked at: ";
        return looked + (parts.isEmpty() ? "nothing to complain of." : String.join(", ", parts) + " listed below.");
    }

    private static List<String> more(JsonNode json, List<Line> findings) {
        List<String> more = new ArrayList<>();
        fields(json.path("counts")).forEach(check -> {
            long listed =
                    findings.stream().filter(line -> line.check().equals(check)).count();
            long all = json.path("counts").path(check).asLong();
            if (all > listed) {
                more.add(check + ": " + Words.count(all) + " in all, the first " + listed + " listed");
            }
        });
        return more;
    }

    private static Line line(JsonNode finding) {
        return new Line(
                finding.path("severity").asText(),
                finding.path("check").asText(),
                place(finding),
                finding.path("message").asText(),
                text(finding.path("value")),
                finding.path("bound").asText(),
                finding.path("remedy").asText(),
                finding.path("reference").asText());
    }

    private static String place(JsonNode finding) {
        String row = finding.path("row").isNumber()
                ? ", row " + Words.count(finding.path("row").asLong())
                : "";
        String column = finding.path("column").isTextual()
                ? ", " + finding.path("column").asText()
                : "";
        return finding.path("file").asText() + row + column;
    }

    private static String text(JsonNode value) {
        return value.isTextual() && !value.asText().isEmpty() ? value.asText() : Words.NOTHING;
    }

    private static Advice advice(JsonNode caution) {
        return new Advice(
                caution.path("level").asText().toLowerCase(Locale.ROOT),
                caution.path("advice").asText(),
                Words.counted(caution.path("sessions").asLong(), "session") + ", most in "
                        + caution.path("session").asText(),
                caution.path("reference").asText());
    }

    /** The elements of an array. */
    static Stream<JsonNode> elements(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false);
    }

    private static Stream<String> fields(JsonNode object) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names.stream();
    }
}
