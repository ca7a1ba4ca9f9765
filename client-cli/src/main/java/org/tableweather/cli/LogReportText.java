package org.tableweather.cli;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.logger.LogReport;
import org.tableweather.schema.logger.Smoothing;

/** What an import of a log did and met, for people and for programs. */
final class LogReportText {
    private static final int SHOWN = 5;

    private LogReportText() {}

    static String of(LogReport report) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%,d rows, %,d readings; usual step %s%n",
                report.rows(),
                report.readings(),
                inWords(report.medianStep())));
        report.guesses()
                .forEach(guess -> text.append("  guessed: ").append(guess).append('\n'));
        report.gaps().stream()
                .limit(SHOWN)
                .forEach(gap -> text.append(String.format(
                        "  gap: nothing from %s to %s (%s)%n",
                        gap.from(), gap.to(), inWords(Duration.between(gap.from(), gap.to())))));
        more(text, report.gapCount(), report.gaps().size(), "gaps");
        rows(text, "repeated", report.repeated(), report.repeatedCount(), "repeated times");
        rows(text, "left out", report.unreadable(), report.unreadableCount(), "rows left out");
        if (report.backwards() > 0) {
            text.append("  ").append(report.backwards()).append(" rows go back in time\n");
        }
        if (report.ambiguous() > 0) {
            text.append("  ")
                    .append(report.ambiguous())
                    .append(" times lie in the hour that the end of summer time repeats: they may be an hour off\n");
        }
        return text.toString().stripTrailing();
    }

    private static void rows(StringBuilder text, String what, List<LogReport.Row> rows, long count, String many) {
        rows.stream()
                .limit(SHOWN)
                .forEach(row -> text.append(String.format(
                        "  %s: row %d, %s = %s: %s%n", what, row.row(), row.column(), row.value(), row.reason())));
        more(text, count, rows.size(), many);
    }

    private static void more(StringBuilder text, long count, int listed, String what) {
        long left = count - Math.min(SHOWN, listed);
        if (left > 0) {
            text.append(String.format(Locale.ROOT, "  ... and %,d more %s%n", left, what));
        }
    }

    private static String inWords(Duration duration) {
        long seconds = duration.toSeconds();
        if (seconds < 120) {
            return seconds + " s";
        }
        return seconds < 7200 ? seconds / 60 + " min" : String.format(Locale.ROOT, "%.1f h", seconds / 3600.0);
    }

    /** The report with times as text. */
    static Map<String, Object> json(LogReport report, Optional<Smoothing> smoothing) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("rows", report.rows());
        json.put("readings", report.readings());
        json.put("columns", report.columns());
        json.put("guesses", report.guesses());
        json.put("medianStepSeconds", report.medianStep().toSeconds());
        json.put(
                "gaps",
                report.gaps().stream()
                        .map(gap -> Map.of(
                                "from", gap.from().toString(), "to", gap.to().toString()))
                        .toList());
        json.put("gapCount", report.gapCount());
        json.put("repeated", report.repeated());
        json.put("repeatedCount", report.repeatedCount());
        json.put("backwards", report.backwards());
        json.put("ambiguous", report.ambiguous());
        json.put("unreadable", report.unreadable());
        json.put("unreadableCount", report.unreadableCount());
        json.put("smoothing", smoothing.map(Smoothing::inWords).orElse("none"));
        return json;
    }
}
