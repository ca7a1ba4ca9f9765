package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;

/**
 * What the model expects in each room against what happened: attempts by expected chance, in up to ten groups of about equal
 * size. Bars are exact binomial intervals.
 *
 * @source Clopper1934
 */
final class RateCalibration {

    private static final int GROUPS = 10;
    private static final double TAIL = 0.025;

    private record Expected(double chance, Cell cell) {}

    private final List<Expected> ordered = new ArrayList<>();
    private final long tried;
    private final List<Double> expected = new ArrayList<>();
    private final List<Double> observed = new ArrayList<>();
    private final List<Double> lower = new ArrayList<>();
    private final List<Double> upper = new ArrayList<>();

    RateCalibration(RateModel model) {
        model.pool
                .cellsByRoom()
                .forEach((room, cells) ->
                        cells.forEach(cell -> ordered.add(new Expected(model.chance(room, cell), cell))));
        ordered.sort(Comparator.comparingDouble(Expected::chance));
        tried = model.pool.tried();
    }

    Plot plot() {
        List<List<Expected>> groups = new ArrayList<>();
        for (int i = 0; i < GROUPS; i++) {
            groups.add(new ArrayList<>());
        }
        long before = 0;
        for (Expected each : ordered) {
            long middle = 2 * before + each.cell().tried();
            groups.get((int) (GROUPS * middle / (2 * tried))).add(each);
            before += each.cell().tried();
        }
        groups.stream().filter(group -> !group.isEmpty()).forEach(this::add);
        return new Plot(
                "calibration",
                "Does what is expected happen? Attempts in groups of about equal expected chance",
                "expected to go in, %",
                "attempts that went in, %",
                List.of(
                        new Series(
                                "as expected",
                                Mark.LINE,
                                List.of(least(), most()),
                                List.of(least(), most()),
                                List.of(),
                                List.of()),
                        new Series("a group, 95 %", Mark.POINTS, expected, observed, lower, upper)));
    }

    private double least() {
        return expected.get(0);
    }

    private double most() {
        return expected.get(expected.size() - 1);
    }

    private void add(List<Expected> group) {
        long n = group.stream().mapToLong(each -> each.cell().tried()).sum();
        long made = group.stream().mapToLong(each -> each.cell().made()).sum();
        double sum = group.stream()
                .mapToDouble(each -> each.cell().tried() * each.chance())
                .sum();
        expected.add(100 * sum / n);
        observed.add(100.0 * made / n);
        lower.add(made == 0 ? 0 : 100 * quantile(made, n - made + 1, TAIL));
        upper.add(made == n ? 100 : 100 * quantile(made + 1, n - made, 1 - TAIL));
    }

    private static double quantile(long a, long b, double level) {
        return new BetaDistribution(a, b).inverseCumulativeProbability(level);
    }
}
