package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.climate.Settling;
import org.tableweather.analyzers.standard.statistics.decay.DecayFit;
import org.tableweather.analyzers.standard.statistics.decay.DecayPoint;

/** Writes a time constant as an answer: figures, words, the approach as a plot. */
final class SettlingAnswer {

    private static final int CURVE_POINTS = 40;
    /** Steps that a plot can name one by one. */
    private static final int MOST_NAMED = 4;

    private final SettlingPool pool;
    private final DecayFit fit;
    private final double sharePct;
    /** Hours to the share for a time constant of one hour. */
    private final double factor;

    SettlingAnswer(SettlingPool pool, DecayFit fit, double sharePct) {
        this.pool = pool;
        this.fit = fit;
        this.sharePct = sharePct;
        factor = new Settling(1).hoursToFraction(sharePct / 100);
    }

    Analysis.Estimated write(Map<String, String> parameters, List<String> references) {
        List<GuardFinding> found = SettlingWarnings.guards(pool);
        List<String> warnings = new ArrayList<>(SettlingWarnings.ofPool(pool));
        warnings.addAll(SettlingWarnings.ofFit(pool, fit));
        found.forEach(finding -> warnings.add(finding.words()));
        return new Analysis.Estimated(
                sentence(),
                parameters,
                facts(found),
                estimates(),
                variance(),
                List.of(),
                List.of(),
                List.of(plot()),
                warnings,
                BiasGuards.withSources(references, found));
    }

    private String sentence() {
        return "The " + pool.outcome.noun + " is " + Figures.plain(sharePct) + " % settled "
                + hours(factor * fit.timeConstantHours()) + " after the climate changes (95 % interval "
                + hours(factor * fit.profile().lower()) + " to "
                + hours(factor * fit.profile().upper())
                + "): its time constant is " + hours(fit.timeConstantHours()) + ", from "
                + Figures.counted(pool.steps.size(), "step") + " of the climate in "
                + Figures.counted(pool.rooms.size(), "room") + ".";
    }

    private static String hours(double hours) {
        return Figures.fixed(hours, hours < 10 ? 2 : 1) + " h";
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("method", "least squares, levels eliminated");
        facts.put("residualSumOfSquares", fit.residualSumOfSquares());
        facts.put("degreesOfFreedom", fit.residualDf());
        facts.put("relativeStandardError", fit.relativeError());
        facts.put("approachF", fit.approachF());
        facts.put("steps", pool.steps.size());
        facts.put("trials", pool.used());
        facts.put("rooms", pool.rooms.size());
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private List<Estimate> estimates() {
        return List.of(
                estimate("time.constant", 1, "time after which 36.8 % of a change is left, one for all steps"),
                estimate("settled", factor, "time after which " + Figures.plain(sharePct) + " % of a change is done"));
    }

    private Estimate estimate(String name, double times, String meaning) {
        return new Estimate(
                name,
                times * fit.timeConstantHours(),
                times * fit.timeConstantHours() * fit.relativeError(),
                (double) fit.residualDf(),
                times * fit.profile().lower(),
                times * fit.profile().upper(),
                "h",
                meaning);
    }

    private List<VarianceComponent> variance() {
        return List.of(new VarianceComponent(
                "residual", OptionalDouble.of(fit.residualDeviation()), OptionalDouble.empty(), Optional.empty()));
    }

    /** What is left of each step's change. */
    private Plot plot() {
        List<Series> series = pool.steps.size() > MOST_NAMED ? byDirection() : byStep();
        return new Plot(
                "settling",
                "What is left of each change of the " + pool.outcome.noun + " after a step of the climate, shot "
                        + pool.shot,
                "time since the step, h",
                pool.outcome.noun + " less its settled value"
                        + (pool.outcome.unit.equals("1") ? "" : ", " + pool.outcome.unit),
                series);
    }

    private List<Series> byStep() {
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < pool.steps.size(); i++) {
            ClimateStep step = pool.steps.get(i);
            series.add(curve("fit, " + step.name(), List.of(i)));
            series.add(points(step.name(), List.of(i)));
        }
        return series;
    }

    /** So many steps would be a legend longer than the plot: those that settle downwards together, and those upwards. */
    private List<Series> byDirection() {
        List<Series> series = new ArrayList<>();
        for (boolean falling : List.of(true, false)) {
            List<Integer> alike = IntStream.range(0, pool.steps.size())
                    .filter(step -> change(step) > 0 == falling)
                    .boxed()
                    .toList();
            if (!alike.isEmpty()) {
                String which = Figures.counted(alike.size(), "step")
                        + (falling ? ", settling downwards" : ", settling upwards");
                series.add(curve("fit, mean of " + which, alike));
                series.add(points(which, alike));
            }
        }
        return series;
    }

    private double settled(int step) {
        return fit.levels().get(step)[0];
    }

    private double change(int step) {
        return fit.levels().get(step)[1];
    }

    /** The mean approach of these steps, as long as the longest was followed. */
    private Series curve(String name, List<Integer> steps) {
        double change = steps.stream().mapToDouble(this::change).sum() / steps.size();
        double longest = steps.stream()
                .map(pool.steps::get)
                .mapToDouble(step -> step.points().get(step.points().size() - 1).hours())
                .max()
                .orElseThrow();
        Settling approach = new Settling(fit.timeConstantHours());
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int i = 0; i <= CURVE_POINTS; i++) {
            double at = longest * i / CURVE_POINTS;
            x.add(at);
            y.add(approach.valueAfter(change, 0, at));
        }
        return new Series(name, Mark.LINE, x, y, List.of(), List.of());
    }

    private Series points(String name, List<Integer> steps) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int step : steps) {
            for (DecayPoint point : pool.steps.get(step).points()) {
                x.add(point.hours());
                y.add(point.mean() - settled(step));
            }
        }
        return new Series(name, Mark.POINTS, x, y, List.of(), List.of());
    }
}
