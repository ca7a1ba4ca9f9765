package org.tableweather.server.contribution;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.StreamSupport;
import org.tableweather.server.web.Words;

/**
 * A check report as a page shows it.
 *
 * @param refused whether anything must be mended
 * @param read what was read, in words
 * @param found how much was found, in words
 * @param findings the most severe first
 * @param notListed how many more there are of the same checks, in words; empty for none
 * @param cautions what the climates of the sessions call for
 */
record HandOverReport(
        boolean refused,
        String read,
        String found,
        List<FindingView> findings,
        String notListed,
        List<String> cautions) {

    HandOverReport {
        findings = List.copyOf(findings);
        cautions = List.copyOf(cautions);
    }

    /**
     * A report.
     *
     * @param report as JSON
     */
    static HandOverReport of(JsonNode report) {
        List<FindingView> findings =
                list(report.path("findings")).stream().map(FindingView::of).toList();
        long notListed = report.path("notListed").asLong();
        return new HandOverReport(
                report.path("refused").asBoolean(),
                Words.counted(report.path("trials").asLong(), "attempt") + " in "
                        + Words.counted(report.path("sessions").asLong(), "session"),
                found(findings, report.path("counts")),
                findings,
                notListed == 0 ? "" : Words.count(notListed) + " more of the same checks are counted, not listed.",
                list(report.path("cautions")).stream()
                        .map(caution -> "Session " + caution.path("session").asText() + ": "
                                + caution.path("advice").asText())
                        .toList());
    }

    private static String found(List<FindingView> findings, JsonNode counts) {
        if (findings.isEmpty()) {
            return "nothing to mend, nothing doubtful";
        }
        return Words.count(count(findings, counts, "refuse")) + " to mend, "
                + Words.counted(count(findings, counts, "warn"), "warning") + ", "
                + Words.counted(count(findings, counts, "note"), "note");
    }

    private static long count(List<FindingView> findings, JsonNode counts, String severity) {
        return findings.stream()
                .filter(finding -> finding.severity().equals(severity))
                .map(FindingView::check)
                .distinct()
                .mapToLong(check -> counts.path(check).asLong(1))
                .sum();
    }

    private static List<JsonNode> list(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).toList();
    }
}
