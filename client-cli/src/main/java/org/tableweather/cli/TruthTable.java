package org.tableweather.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.cli.demo.Truth;

/** What the invented data were made from, beside what the pooled analysis found. */
final class TruthTable {
    private TruthTable() {}

    static String of(Truth truth, AnalysisRun run) {
        return run.analysis().fold(answer -> answered(truth, run, answer), TruthTable::declined);
    }

    private static String answered(Truth truth, AnalysisRun run, Analysis.Estimated answer) {
        StringBuilder text =
                new StringBuilder("Pooled on the server by " + run.info().id() + " "
                        + run.info().version() + ": " + run.dataset().inWords() + " of all shots.\n\n");
        text.append(table(truth, answer)).append('\n').append(answer.sentence()).append('\n');
        answer.warnings()
                .forEach(warning -> text.append("note: ").append(warning).append('\n'));
        return text.toString();
    }

    private static String declined(Analysis.Declined none) {
        return "The analysis declined: " + none.detail() + "\n";
    }

    private static String table(Truth truth, Analysis.Estimated answer) {
        TextTable table = TextTable.of(
                "quantity", "truth", "estimate", "std.err", "lower 95 %", "upper 95 %", "truth inside", "unit");
        fixed(truth)
                .forEach((name, value) -> answer.estimates().stream()
                        .filter(one -> one.name().equals(name) && one.value() != null)
                        .forEach(one -> table.row(
                                name,
                                AnalysisText.number(value),
                                AnalysisText.number(one.value()),
                                AnalysisText.number(one.standardError()),
                                AnalysisText.number(one.lower()),
                                AnalysisText.number(one.upper()),
                                one.lower() <= value && value <= one.upper() ? "yes" : "no",
                                one.unit())));
        varying(truth)
                .forEach((name, value) -> answer.variance().stream()
                        .filter(one -> one.name().equals(name))
                        .forEach(one -> table.row(
                                name,
                                AnalysisText.number(value),
                                AnalysisText.number(figure(one)),
                                "",
                                "",
                                "",
                                "",
                                kind(one))));
        return table.text();
    }

    private static Double figure(Analysis.VarianceComponent one) {
        OptionalDouble figure = one.sd().isPresent() ? one.sd() : one.value();
        return figure.isPresent() ? figure.getAsDouble() : null;
    }

    private static String kind(Analysis.VarianceComponent one) {
        return (one.sd().isPresent() ? "standard deviation" : "correlation")
                + Optional.of(one.note().orElse(""))
                        .filter(note -> !note.isEmpty())
                        .map(note -> ", " + note)
                        .orElse("");
    }

    private static Map<String, Double> fixed(Truth truth) {
        Map<String, Double> values = new LinkedHashMap<>();
        values.put("intercept", truth.interceptDeg());
        values.put("humidity", truth.humidityDeg());
        values.put("humidity.squared", truth.humiditySquaredDeg());
        values.put("temperature", truth.temperatureDeg());
        return values;
    }

    private static Map<String, Double> varying(Truth truth) {
        Map<String, Double> values = new LinkedHashMap<>();
        values.put("room.intercept", truth.roomSd());
        values.put("room.humidity", truth.roomSlopeSd());
        values.put("room.correlation", truth.roomCorrelation());
        values.put("session.intercept", truth.sessionSd());
        values.put("residual", truth.trialSd());
        return values;
    }
}
