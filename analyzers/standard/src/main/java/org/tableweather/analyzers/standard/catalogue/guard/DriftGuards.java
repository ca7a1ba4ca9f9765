package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.LinearRegression;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;

/** Does the outcome follow the order in which things were done? */
final class DriftGuards {

    private static final Coverage LEVEL = new Coverage(0.99);
    /** Fewer degrees of freedom tell nothing. */
    private static final long FEWEST = 5;

    private static final double COLLINEAR = 1e-9;
    private static final double LARGEST = 1e6;

    private final GuardedPool pool;
    private final List<GuardFinding> found = new ArrayList<>();

    DriftGuards(GuardedPool pool) {
        this.pool = pool;
    }

    List<GuardFinding> findings() {
        withinSessions();
        overSessions();
        return found;
    }

    /** One slope for all sessions, each with its own mean: {@code b = Σ Sxy / Σ Sxx}. */
    private void withinSessions() {
        double squares = 0;
        double products = 0;
        double rest = 0;
        long df = -1;
        long longest = 0;
        for (OutcomeScatter scatter : pool.scatters()) {
            squares += scatter.orderSquares();
            products += scatter.orderProduct();
            rest += scatter.second();
            df += scatter.n() - 1;
            longest = Math.max(longest, scatter.n());
        }
        if (df < FEWEST || !(squares > 0)) {
            return;
        }
        double slope = products / squares;
        double residual = Math.max(0, rest - slope * products) / df;
        double t = bounded(slope / Math.sqrt(residual / squares));
        double bound = LEVEL.halfWidth(df);
        if (Math.abs(t) > bound) {
            found.add(new GuardFinding(
                    Guard.DRIFT_WITHIN_SESSIONS,
                    t,
                    bound,
                    "Within sessions " + pool.outcome + " drifts by " + Figures.fixed(slope * (longest - 1), 3)
                            + " over " + longest + " attempts (t = " + Figures.fixed(t, 1) + ")."));
        }
    }

    /** Session means within rooms on humidity and the session's place in its room. */
    private void overSessions() {
        MomentsBuilder builder = new MomentsBuilder(3);
        long rooms = 0;
        for (List<GuardedSession> room : pool.humidByRoom().values()) {
            List<double[]> rows = rows(room);
            rooms += rows.isEmpty() ? 0 : 1;
            rows.forEach(builder::add);
        }
        Moments moments = builder.build();
        long df = moments.n() - rooms - 2;
        if (df >= FEWEST && independent(moments)) {
            judge(LinearRegression.withIntercept(moments), df);
        }
    }

    /** What has no scatter at all is as sure as can be told in figures. */
    private static double bounded(double t) {
        return Math.max(-LARGEST, Math.min(LARGEST, t));
    }

    private static boolean independent(Moments moments) {
        double both = moments.cross(0, 0) * moments.cross(1, 1);
        return both > 0 && moments.cross(0, 1) * moments.cross(0, 1) < (1 - COLLINEAR) * both;
    }

    // the rows are centred by room: that takes one degree of freedom for each room, of which the regression knows one
    private void judge(LinearRegression regression, long df) {
        double error = regression.standardError(2) * Math.sqrt((double) regression.residualDf() / df);
        double t = bounded(regression.coefficients()[2] / error);
        double bound = LEVEL.halfWidth(df);
        if (Math.abs(t) > bound) {
            found.add(new GuardFinding(
                    Guard.ORDER_OF_SESSIONS,
                    t,
                    bound,
                    "Beside humidity, the mean of " + pool.outcome + " changes by "
                            + Figures.fixed(regression.coefficients()[2], 3)
                            + " from one session of a room to the next (t = " + Figures.fixed(t, 1) + ")."));
        }
    }

    /** Humidity, place, mean of the outcome, all from their means in the room; only sessions whose start is stated. */
    private List<double[]> rows(List<GuardedSession> room) {
        List<GuardedSession> ordered = ordered(room);
        List<double[]> rows = new ArrayList<>();
        double[] centre = new double[3];
        for (int place = 0; place < ordered.size(); place++) {
            GuardedSession session = ordered.get(place);
            double[] row = {
                pool.rhPct(session), place, pool.scatter(session).orElseThrow().mean()
            };
            rows.add(row);
            for (int i = 0; i < row.length; i++) {
                centre[i] += row[i] / ordered.size();
            }
        }
        for (double[] row : rows) {
            for (int i = 0; i < row.length; i++) {
                row[i] -= centre[i];
            }
        }
        return rows;
    }

    static List<GuardedSession> ordered(List<GuardedSession> room) {
        return room.stream()
                .filter(session -> !Double.isNaN(session.protocol().startedAtS()))
                .sorted(Comparator.comparingDouble(
                                (GuardedSession session) -> session.protocol().startedAtS())
                        .thenComparing(GuardedSession::session))
                .toList();
    }
}
