package org.tableweather.cli;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;

/** An analysis as a person reads it. */
final class AnalysisText {
    private AnalysisText() {}

    /** All of it but the curve and the rooms. */
    static String of(AnalysisRun run) {
        StringBuilder text = new StringBuilder();
        AnalysisRun.Dataset dataset = run.dataset();
        if (dataset.invented()) {
            text.append("INVENTED DATA: made up to show the program, not measured\n");
        }
        text.append(run.info().id())
                .append(' ')
                .append(run.info().version())
                .append(" over ")
                .append(dataset.inWords())
                .append("\n\n");
        return text.append(run.analysis().<String>fold(AnalysisText::estimated, AnalysisText::declined))
                .toString();
    }

    private static String estimated(Analysis.Estimated answer) {
        StringBuilder text = new StringBuilder(answer.sentence()).append("\n\n");
        text.append(estimates(answer)).append('\n');
        if (!answer.variance().isEmpty()) {
            text.append(variance(answer)).append('\n');
        }
        text.append(parameters(answer.parameters()));
        answer.warnings()
                .forEach(warning -> text.append("warning: ").append(warning).append('\n'));
        return text.append("references: ")
                .append(String.join(", ", answer.references()))
                .append('\n')
                .toString();
    }

    private static String declined(Analysis.Declined none) {
        StringBuilder text =
                new StringBuilder("declined (" + none.reason().schemaName() + "): " + none.detail() + "\n");
        text.append(parameters(none.parameters()));
        none.warnings()
                .forEach(warning -> text.append("warning: ").append(warning).append('\n'));
        return text.toString();
    }

    /** The figures that answer the question. */
    static String estimates(Analysis.Estimated answer) {
        TextTable table = TextTable.of("estimate", "value", "std.err", "lower 95 %", "upper 95 %", "df", "unit");
        for (Analysis.Estimate one : answer.estimates()) {
            table.row(
                    one.name(),
                    number(one.value()),
                    number(one.standardError()),
                    number(one.lower()),
                    number(one.upper()),
                    one.df() == null ? "-" : String.format(Locale.ROOT, "%.1f", one.df()),
                    one.unit());
        }
        StringBuilder text = new StringBuilder(table.text());
        answer.estimates()
                .forEach(one -> text.append("  ")
                        .append(one.name())
                        .append(": ")
                        .append(one.meaning())
                        .append('\n'));
        return text.toString();
    }

    private static String variance(Analysis.Estimated answer) {
        TextTable table = TextTable.of("varies between", "std.dev", "correlation", "note");
        for (Analysis.VarianceComponent one : answer.variance()) {
            table.row(
                    one.name(),
                    number(one.sd()),
                    number(one.value()),
                    one.note().orElse(""));
        }
        return table.text();
    }

    private static String parameters(Map<String, String> parameters) {
        StringBuilder text = new StringBuilder("parameters:");
        new TreeMap<>(parameters)
                .forEach((name, value) ->
                        text.append(' ').append(name).append('=').append(value));
        return text.append('\n').toString();
    }

    /** The same, nothing for nothing. */
    static String number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    /** Four decimals: columns stay aligned, and small slopes keep their digits. */
    static String number(Double value) {
        if (value == null || !Double.isFinite(value)) {
            return "-";
        }
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
