package org.tableweather.server.analysis;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.server.web.Words;

/**
 * Two kept results side by side.
 *
 * @param first the one
 * @param second the other
 * @param asked what was asked of each, where it differs: name, first, second
 * @param estimates each figure of either: name, unit, first, second, second less first
 */
record RunComparison(Side first, Side second, List<List<String>> asked, List<List<String>> estimates) {
    private static final int DECIMALS = 3;

    RunComparison {
        asked = List.copyOf(asked);
        estimates = List.copyOf(estimates);
    }

    /**
     * One of the two.
     *
     * @param id of the run
     * @param name analyzer and what is set
     * @param answer the sentence
     * @param curve its curve; empty when it has none
     * @param invented whether its data are made up
     * @param madeFrom counts in words
     */
    record Side(String id, String name, String answer, Optional<PlotFigure> curve, boolean invented, String madeFrom) {

        static Side of(String id, AnalysisRun run) {
            return new Side(
                    id,
                    RunLine.name(run.info().id(), parameters(run)),
                    run.analysis().fold(Analysis.Estimated::sentence, Analysis.Declined::detail),
                    PlotFigure.curve(run).stream().findFirst(),
                    run.dataset().invented(),
                    run.dataset().inWords());
        }
    }

    static RunComparison of(String firstId, AnalysisRun first, String secondId, AnalysisRun second) {
        return new RunComparison(
                Side.of(firstId, first), Side.of(secondId, second), asked(first, second), estimates(first, second));
    }

    /** Heads of the columns of {@link #asked}. */
    public List<String> askedNames() {
        return List.of("What differs", "First", "Second");
    }

    /** Heads of the columns of {@link #estimates}. */
    public List<String> estimateNames() {
        return List.of("Estimate", "Unit", "First (95 % interval)", "Second (95 % interval)", "Second less first");
    }

    private static Map<String, String> parameters(AnalysisRun run) {
        return run.analysis().fold(Analysis.Estimated::parameters, Analysis.Declined::parameters);
    }

    private static List<List<String>> asked(AnalysisRun first, AnalysisRun second) {
        List<List<String>> rows = new ArrayList<>();
        difference(rows, "analyzer", version(first), version(second));
        Set<String> names = new TreeSet<>(parameters(first).keySet());
        names.addAll(parameters(second).keySet());
        for (String name : names) {
            difference(
                    rows,
                    name,
                    parameters(first).getOrDefault(name, ""),
                    parameters(second).getOrDefault(name, ""));
        }
        difference(
                rows, "made from", first.dataset().inWords(), second.dataset().inWords());
        difference(
                rows,
                "set of sessions",
                first.dataset().hash(),
                second.dataset().hash());
        return rows;
    }

    private static String version(AnalysisRun run) {
        return run.info().id() + " " + run.info().version();
    }

    private static void difference(List<List<String>> rows, String name, String first, String second) {
        if (!first.equals(second)) {
            rows.add(List.of(name, first.isEmpty() ? Words.NOTHING : first, second.isEmpty() ? Words.NOTHING : second));
        }
    }

    private static List<List<String>> estimates(AnalysisRun first, AnalysisRun second) {
        Set<String> names = new LinkedHashSet<>();
        all(first).forEach(one -> names.add(one.name()));
        all(second).forEach(one -> names.add(one.name()));
        return names.stream()
                .map(name -> row(name, find(first, name), find(second, name)))
                .toList();
    }

    private static List<String> row(String name, Optional<Estimate> first, Optional<Estimate> second) {
        String unit = first.or(() -> second).map(Estimate::unit).orElse("");
        boolean comparable = first.map(Estimate::unit).equals(second.map(Estimate::unit));
        Double difference = comparable
                ? less(second.orElseThrow().value(), first.orElseThrow().value())
                : null;
        return List.of(name, unit, words(first), words(second), Words.number(difference, DECIMALS));
    }

    private static Double less(Double value, Double other) {
        return value == null || other == null ? null : Double.valueOf(value - other);
    }

    private static String words(Optional<Estimate> estimate) {
        return estimate.filter(one -> Objects.nonNull(one.value()))
                .map(one -> Words.number(one.value(), DECIMALS) + " (" + Words.number(one.lower(), DECIMALS) + " to "
                        + Words.number(one.upper(), DECIMALS) + ")")
                .orElse(Words.NOTHING);
    }

    private static List<Estimate> all(AnalysisRun run) {
        return run.analysis().fold(Analysis.Estimated::estimates, none -> List.of());
    }

    private static Optional<Estimate> find(AnalysisRun run, String name) {
        return all(run).stream().filter(one -> one.name().equals(name)).findFirst();
    }
}
