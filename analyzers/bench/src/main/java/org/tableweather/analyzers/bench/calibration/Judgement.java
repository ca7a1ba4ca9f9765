package org.tableweather.analyzers.bench.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.bench.calibration.PoolDesign.DrawnPool;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.LinearRegression;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.RoomSessions;
import org.tableweather.analyzers.standard.statistics.robust.Cluster;
import org.tableweather.analyzers.standard.statistics.robust.ClusterRegression;
import org.tableweather.analyzers.standard.statistics.robust.RobustEffect;

/** One drawn pool, analysed in every way: which of the 95 % intervals hold the truth. */
final class Judgement {

    /** Humidities at which bands are judged, as h. */
    private static final double[] PLACES = {-1.5, 0, 1.5};

    /** Half width of a normal distribution's central 95 %. */
    private static final double NORMAL = 1.959964;

    /** Ways to an interval of the slope. */
    enum Way {
        DEFAULT("room slope, Satterthwaite (the default)"),
        KENWARD_ROGER("room slope, Kenward–Roger"),
        ROOMS_LESS_ONE("room slope, t on rooms − 1"),
        NO_ROOM_SLOPE("room and session intercepts only, Satterthwaite"),
        CLUSTER_ROBUST("least squares on trials, CR2 by room"),
        SESSION_MEANS("least squares on session means"),
        TRIALS("least squares on trials, as if independent");

        final String words;

        Way(String words) {
            this.words = words;
        }
    }

    private final PoolDesign design;
    private final boolean[] slopeHeld = new boolean[Way.values().length];
    private final boolean[] judged = new boolean[Way.values().length];
    private int meanHeld;
    private int newRoomHeld;
    private boolean singular;
    private Optional<Workings> workings = Optional.empty();

    private Judgement(PoolDesign design) {
        this.design = design;
    }

    static Judgement of(PoolDesign design, long seed) {
        Judgement judgement = new Judgement(design);
        DrawnPool pool = design.draw(seed);
        NestedModel model = NestedModel.withDefaults();
        if (model.withRandom(0, 1).fit(pool.rooms()) instanceof NestedFit fit) {
            judgement.judgeFit(fit, pool);
        }
        if (model.fit(pool.rooms()) instanceof NestedFit fit) {
            judgement.judge(Way.NO_ROOM_SLOPE, fit.coefficient(1));
        }
        judgement.judgeLeastSquares(pool.rooms());
        return judgement;
    }

    private void judgeFit(NestedFit fit, DrawnPool pool) {
        Optional<Quantity> slope = fit.coefficient(1);
        judge(Way.DEFAULT, slope);
        judge(Way.KENWARD_ROGER, fit.withKenwardRoger().flatMap(precise -> precise.coefficient(1)));
        judge(
                Way.ROOMS_LESS_ONE,
                slope.map(known -> new Quantity(known.value(), known.standardError(), design.rooms() - 1)));
        singular = fit.cautions().contains(Caution.ROOM_ZERO)
                || fit.cautions().contains(Caution.CORRELATION_AT_BOUND)
                || fit.cautions().contains(Caution.SESSION_ZERO);
        double normalHeld = 0;
        double df = 0;
        for (double h : PLACES) {
            double[] row = {1, h, h * h, 0};
            double mean = design.mean(h);
            double inRoom = mean + pool.newRoom().intercept() + pool.newRoom().slope() * h;
            meanHeld += holds(fit.contrast(row), mean) ? 1 : 0;
            Quantity newRoom = fit.inNewRoom(row);
            newRoomHeld += holds(newRoom, inRoom) ? 1 : 0;
            normalHeld += holdsByNormal(newRoom, inRoom) ? 1.0 / PLACES.length : 0;
            df += newRoom.df() / PLACES.length;
        }
        double newRoomByNormal = normalHeld;
        double newRoomDf = df;
        workings = slope.map(known -> new Workings(
                known.value(),
                known.standardError(),
                known.df(),
                fit.roomCovariance()[1][1],
                newRoomDf,
                holdsByNormal(known, design.slope()),
                newRoomByNormal));
    }

    private void judgeLeastSquares(List<RoomSessions> rooms) {
        List<Cluster> clusters = new ArrayList<>();
        List<Moments> sessions = new ArrayList<>();
        List<Moments> means = new ArrayList<>();
        for (RoomSessions room : rooms) {
            clusters.add(new Cluster(room.key(), room.merged()));
            sessions.addAll(room.sessions());
            room.sessions().forEach(session -> means.add(new Moments(1, session.mean(), new double[10])));
        }
        judge(
                Way.CLUSTER_ROBUST,
                ClusterRegression.withDefaults()
                        .fit(clusters)
                        .fold(
                                fit -> {
                                    RobustEffect effect = fit.coefficient(1);
                                    return Optional.of(
                                            new Quantity(effect.value(), effect.standardError(), effect.df()));
                                },
                                refused -> Optional.empty()));
        judge(Way.SESSION_MEANS, Optional.of(leastSquares(means)));
        judge(Way.TRIALS, Optional.of(leastSquares(sessions)));
    }

    private static Quantity leastSquares(List<Moments> parts) {
        LinearRegression fit = LinearRegression.withIntercept(Moments.merged(parts));
        return new Quantity(fit.coefficients()[1], fit.standardError(1), fit.residualDf());
    }

    private void judge(Way way, Optional<Quantity> slope) {
        slope.ifPresent(known -> {
            judged[way.ordinal()] = true;
            slopeHeld[way.ordinal()] = holds(known, design.slope());
        });
    }

    private static boolean holds(Quantity estimate, double truth) {
        double reach = StudentT.halfWidth(0.95, Math.max(1, estimate.df())) * estimate.standardError();
        return Math.abs(estimate.value() - truth) <= reach;
    }

    private static boolean holdsByNormal(Quantity estimate, double truth) {
        return Math.abs(estimate.value() - truth) <= NORMAL * estimate.standardError();
    }

    /** What stands behind the default intervals; empty without a fit. */
    Optional<Workings> workings() {
        return workings;
    }

    /** Whether this way gave an interval. */
    boolean isJudged(Way way) {
        return judged[way.ordinal()];
    }

    /** Whether this way's interval of the slope holds the truth. */
    boolean slopeHeld(Way way) {
        return slopeHeld[way.ordinal()];
    }

    /** Share of the places where the mean's band holds the truth. */
    double meanHeld() {
        return meanHeld / (double) PLACES.length;
    }

    /** Share of the places where the band of a new room holds that room's curve. */
    double newRoomHeld() {
        return newRoomHeld / (double) PLACES.length;
    }

    /** Whether some variance is at its bound. */
    boolean singular() {
        return singular;
    }
}
