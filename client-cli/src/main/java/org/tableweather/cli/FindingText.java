package org.tableweather.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.check.Severity;

/** Findings as a person reads them. */
final class FindingText {
    /** How many findings of a check are told when not all are asked for. */
    static final int FEW = 3;

    private FindingText() {}

    /** One line: the verdict and how much was found. */
    static String headline(String path, CheckReport report) {
        return String.format(
                Locale.ROOT,
                "%s: %s; %,d trials in %,d sessions; %s",
                path,
                report.isRefused() ? "REFUSED" : "accepted",
                report.trials(),
                report.sessions(),
                counted(report));
    }

    private static String counted(CheckReport report) {
        long refusals = count(report, Severity.REFUSE);
        long warnings = count(report, Severity.WARN);
        long notes = count(report, Severity.NOTE);
        return refusals + " to mend, " + warnings + (warnings == 1 ? " warning, " : " warnings, ") + notes
                + (notes == 1 ? " note" : " notes");
    }

    /** Whether there are warnings. */
    static boolean isDoubtful(CheckReport report) {
        return count(report, Severity.WARN) > 0;
    }

    private static long count(CheckReport report, Severity severity) {
        return report.findings().stream()
                .filter(finding -> finding.severity() == severity)
                .map(Finding::check)
                .distinct()
                .mapToLong(check -> report.counts().getOrDefault(check, 1L))
                .sum();
    }

    /**
     * All findings, at most so many of a check.
     *
     * @param ofEachCheck how many
     */
    static String all(CheckReport report, int ofEachCheck) {
        return blocks(report, finding -> true, ofEachCheck);
    }

    /** The findings that refuse, the first few of each check. */
    static String refusals(CheckReport report) {
        return blocks(report, finding -> finding.severity() == Severity.REFUSE, FEW)
                .stripTrailing();
    }

    private static String blocks(CheckReport report, Predicate<Finding> wanted, int ofEachCheck) {
        Map<String, List<Finding>> byCheck = report.findings().stream()
                .filter(wanted)
                .collect(Collectors.groupingBy(Finding::check, LinkedHashMap::new, Collectors.toList()));
        StringBuilder text = new StringBuilder();
        byCheck.forEach((check, findings) -> {
            findings.stream().limit(ofEachCheck).forEach(finding -> text.append(block(finding)));
            long more = report.counts().getOrDefault(check, 0L) - Math.min(ofEachCheck, findings.size());
            if (more > 0) {
                text.append(String.format(Locale.ROOT, "         ... and %,d more of %s%n", more, check));
            }
        });
        return text.toString();
    }

    private static String block(Finding finding) {
        return String.format(
                Locale.ROOT,
                "  %-6s %s  [%s]%n         %s%n         remedy: %s%n         bound: %s; source: %s%n",
                finding.severity().schemaName(),
                place(finding),
                finding.check(),
                finding.message(),
                finding.remedy(),
                finding.bound(),
                finding.reference());
    }

    private static String place(Finding finding) {
        StringBuilder place = new StringBuilder(finding.file());
        finding.row().ifPresent(row -> place.append(" row ").append(row));
        finding.column().ifPresent(column -> place.append(", ").append(column));
        finding.value().ifPresent(value -> place.append(" = ").append(value));
        return place.toString();
    }
}
