package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.RoomScatter;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.ScatterTest;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.SessionResidual;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * What the model leaves over, what each room does to the slope, and whether trials scatter alike in all rooms.
 *
 * <p>A room is told when the slope moves by more than 2/√rooms standard errors without it; scatter when it is unequal at 1 %
 * and by more than half, a session when it lies 4 deviations off (common practice without a source).
 *
 * @source Bartlett1937
 * @source Belsley1980
 */
final class HumidityDiagnosis {

    private static final int MOST_POINTS = 500;
    private static final double UNEQUAL = 0.01;
    private static final double LEAST_RATIO = 1.5;
    private static final double STRAY = 4;

    private final HumidityFit pooled;
    private final NestedDiagnostics diagnostics;
    private final List<String> warnings = new ArrayList<>();

    HumidityDiagnosis(HumidityFit pooled) {
        this.pooled = pooled;
        diagnostics = new NestedDiagnostics(pooled.fit());
    }

    HumidityPart part() {
        Map<String, Object> facts = new LinkedHashMap<>();
        List<Plot> plots = new ArrayList<>();
        List<SessionResidual> sessions = diagnostics.sessions();
        plots.add(residuals(sessions));
        plots.add(quantiles(sessions));
        warnOfStrays(sessions);
        if (pooled.pool().rooms.size() > 2) {
            plots.add(influence());
        }
        warnOfScatter(facts);
        return new HumidityPart("", List.of(), plots, warnings, facts);
    }

    private Plot residuals(List<SessionResidual> sessions) {
        Map<Integer, List<SessionResidual>> byRoom = new LinkedHashMap<>();
        sessions.forEach(session -> byRoom.computeIfAbsent(session.room(), room -> new ArrayList<>())
                .add(session));
        List<Series> series = new ArrayList<>();
        byRoom.forEach((room, own) -> series.add(new Series(
                pooled.fit().rooms().get(room).key(),
                Mark.POINTS,
                own.stream().map(SessionResidual::fitted).toList(),
                own.stream().map(SessionResidual::residual).toList(),
                List.of(),
                List.of())));
        return new Plot(
                "residuals",
                "What the model leaves of each session's mean",
                "fitted " + pooled.response().axis(),
                "session mean less fitted" + unit(),
                series);
    }

    private String unit() {
        String unit = pooled.response().unit;
        return unit.equals("1") ? "" : ", " + unit;
    }

    private static Plot quantiles(List<SessionResidual> sessions) {
        List<Double> sorted = sessions.stream()
                .map(SessionResidual::standardised)
                .filter(Double::isFinite)
                .sorted()
                .toList();
        int shown = Math.min(sorted.size(), MOST_POINTS);
        List<Double> normal = new ArrayList<>();
        List<Double> found = new ArrayList<>();
        NormalDistribution distribution = new NormalDistribution();
        for (int i = 0; i < shown; i++) {
            int at = shown == sorted.size() ? i : (int) ((i + 0.5) * sorted.size() / shown);
            normal.add(distribution.inverseCumulativeProbability((at + 0.5) / sorted.size()));
            found.add(sorted.get(at));
        }
        List<Double> ends = normal.isEmpty() ? List.of() : List.of(normal.get(0), normal.get(normal.size() - 1));
        return new Plot(
                "quantiles",
                "Session residuals against a normal distribution",
                "normal quantile",
                "standardised session residual",
                List.of(
                        new Series("where normal residuals lie", Mark.LINE, ends, ends, List.of(), List.of()),
                        new Series("sessions", Mark.POINTS, normal, found, List.of(), List.of())));
    }

    private void warnOfStrays(List<SessionResidual> sessions) {
        List<String> strays = new ArrayList<>();
        for (SessionResidual session : sessions) {
            if (Math.abs(session.standardised()) > STRAY) {
                strays.add(pooled.fit().rooms().get(session.room()).key() + " (" + pooled.figure(session.residual())
                        + ")");
            }
        }
        if (!strays.isEmpty()) {
            warnings.add("Sessions that lie more than " + Figures.plain(STRAY)
                    + " standard deviations off the model, in: " + Figures.listed(strays)
                    + "; look for a slip before you believe the rest.");
        }
    }

    private Plot influence() {
        double[] row = pooled.columns().slopeRow();
        Quantity all = pooled.slope();
        List<Series> series = new ArrayList<>();
        List<String> moving = new ArrayList<>();
        List<RoomSessions> rooms = pooled.pool().rooms;
        double halfWidth = FitFigures.halfWidth(all.df());
        double reach = halfWidth * all.standardError();
        List<Double> ends = List.of(1.0, (double) rooms.size());
        series.add(new Series(
                "all rooms, 95 %",
                Mark.BAND,
                ends,
                Collections.nCopies(2, all.value()),
                Collections.nCopies(2, all.value() - reach),
                Collections.nCopies(2, all.value() + reach)));
        for (int room = 0; room < rooms.size(); room++) {
            Optional<Quantity> without = diagnostics.without(room, row);
            String key = rooms.get(room).key();
            if (without.isEmpty()) {
                moving.add(key + " (no slope without it)");
                continue;
            }
            double value = without.get().value();
            double bar = halfWidth * without.get().standardError();
            series.add(new Series(
                    key, Mark.POINTS, List.of(room + 1.0), List.of(value), List.of(value - bar), List.of(value + bar)));
            if (Math.abs(value - all.value()) > 2 / Math.sqrt(rooms.size()) * all.standardError()) {
                moving.add(key + " (" + pooled.figure(value) + " without it)");
            }
        }
        if (!moving.isEmpty()) {
            warnings.add("The slope, " + pooled.figure(all.value()) + " "
                    + pooled.question().measure().per()
                    + ", moves by more than 2/√rooms of its standard error without: " + Figures.listed(moving) + ".");
        }
        return new Plot(
                "influence",
                "The slope without each room, variances held where all rooms put them",
                "room, by its key",
                "slope, " + pooled.slopeUnit(),
                series);
    }

    private void warnOfScatter(Map<String, Object> facts) {
        Optional<ScatterTest> test = diagnostics.equalScatter();
        if (test.isEmpty()) {
            return;
        }
        facts.put("equalScatterPValue", test.get().pValue());
        List<RoomScatter> rooms = diagnostics.scatter();
        RoomScatter most = Collections.max(rooms, Comparator.comparingDouble(RoomScatter::variance));
        RoomScatter least = Collections.min(rooms, Comparator.comparingDouble(RoomScatter::variance));
        if (test.get().pValue() < UNEQUAL && most.variance() > LEAST_RATIO * LEAST_RATIO * least.variance()) {
            warnings.add("Trials do not scatter alike in all rooms (Bartlett's test, p "
                    + (test.get().pValue() < 0.001
                            ? "< 0.001"
                            : "= " + Figures.fixed(test.get().pValue(), 3))
                    + "): from " + pooled.figure(Math.sqrt(least.variance())) + " in " + key(least) + " to "
                    + pooled.figure(Math.sqrt(most.variance())) + " in " + key(most)
                    + "; the model takes one scatter for all, see the robust slope beside it.");
        }
    }

    private String key(RoomScatter room) {
        return pooled.fit().rooms().get(room.room()).key();
    }
}
