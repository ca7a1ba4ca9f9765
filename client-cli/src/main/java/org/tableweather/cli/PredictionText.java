package org.tableweather.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Plot;

/** A prediction as a person reads it: two sentences, both ways on the table, contact by contact, what to change. */
final class PredictionText {

    private PredictionText() {}

    static String of(AnalysisRun run, int columns) {
        return run.analysis().<String>fold(answer -> estimated(run, answer, columns), none -> AnalysisText.of(run));
    }

    private static String estimated(AnalysisRun run, Analysis.Estimated answer, int columns) {
        StringBuilder text = new StringBuilder();
        if (run.dataset().invented()) {
            text.append("INVENTED DATA: made up to show the program, not measured\n");
        }
        text.append(answer.sentence()).append("\n\n");
        answer.plots().stream()
                .filter(plot -> plot.id().equals("table"))
                .findFirst()
                .ifPresent(plot -> text.append(drawn(plot, columns)));
        text.append(contacts(answer)).append('\n').append(figures(answer));
        answer.warnings()
                .forEach(warning -> text.append("warning: ").append(warning).append('\n'));
        return text.append("made from ")
                .append(run.dataset().inWords())
                .append('\n')
                .toString();
    }

    private static String drawn(Plot plot, int columns) {
        return new TableSketch(columns)
                .line(plot.series().get(1), 'o')
                .line(plot.series().get(0), '.')
                .text(". " + plot.series().get(0).name() + "    o "
                        + plot.series().get(1).name());
    }

    private static String contacts(Analysis.Estimated answer) {
        TextTable table =
                TextTable.of("contact", "rail", "first, x y", "second, x y", "leaves at", "then", "share of drift");
        if (answer.fit().get("contacts") instanceof List<?> contacts) {
            for (Object each : contacts) {
                if (each instanceof Map<?, ?> contact) {
                    table.row(
                            String.valueOf(contact.get("contact")),
                            String.valueOf(contact.get("rail")),
                            place(contact, "from"),
                            place(contact, "to"),
                            number(contact.get("from.reboundDeg"), "%.1f°"),
                            number(contact.get("to.reboundDeg"), "%.1f°"),
                            number(contact.get("share"), "%+.2f"));
                }
            }
        }
        return table.text();
    }

    private static String place(Map<?, ?> contact, String when) {
        return number(contact.get(when + ".xDia"), "%.2f") + " " + number(contact.get(when + ".yDia"), "%.2f");
    }

    private static String number(Object value, String format) {
        return value instanceof Number number ? String.format(Locale.ROOT, format, number.doubleValue()) : "";
    }

    private static String figures(Analysis.Estimated answer) {
        TextTable table = TextTable.of("", "value", "lower 95 %", "upper 95 %", "unit");
        for (Analysis.Estimate one : answer.estimates()) {
            if (one.df() != null || one.name().endsWith(".change")) {
                table.row(one.name(), figure(one.value()), figure(one.lower()), figure(one.upper()), one.unit());
            }
        }
        return table.text();
    }

    private static String figure(Double value) {
        return value == null ? "none" : String.format(Locale.ROOT, "%+.2f", value);
    }
}
