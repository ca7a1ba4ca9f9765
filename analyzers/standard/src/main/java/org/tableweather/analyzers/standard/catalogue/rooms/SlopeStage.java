package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.rooms.PooledRoom.PooledSession;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.meta.StudyEffect;

/**
 * The first stage: a humidity slope for each room, from its session means alone.
 *
 * <pre>
 * b = Σ w (h − h̄) y / Σ w (h − h̄)²
 * shared: w = 1/(v + s²/n),  Var b = 1 / Σ w (h − h̄)²
 * own:    w = 1,             Var b = RSS / (S − 2) / Σ (h − h̄)²
 * </pre>
 */
final class SlopeStage {

    /** Narrower humidities of a room say nothing of its slope, %RH. */
    static final double LEAST_RANGE_PCT = 2;
    /** Own scatter on fewer degrees of freedom than 2 is a lottery. */
    static final int LEAST_OWN_SESSIONS = 4;

    /** One for each room that has a slope, in the order of the pool. */
    final List<RoomSlope> slopes = new ArrayList<>();
    /** Rooms whose sessions are too few, or too alike in humidity. */
    final List<String> narrow = new ArrayList<>();
    /** Rooms whose session means lie on a line to rounding. */
    final List<String> exact = new ArrayList<>();

    private final SlopeQuestion question;
    private final Optional<NestedFit> fit;

    /** One room's slope per 10 %RH with its sampling variance. */
    record RoomSlope(PooledRoom room, double slope, double variance) {

        StudyEffect effect() {
            return new StudyEffect(room.key(), slope, variance);
        }
    }

    /**
     * Works them out.
     *
     * @param fit the pooled model; may be empty when nothing of it is asked for
     */
    SlopeStage(RoomPool pool, SlopeQuestion question, Optional<NestedFit> fit) {
        this.question = question;
        this.fit = fit;
        pool.rooms().forEach(this::add);
    }

    List<StudyEffect> effects() {
        return slopes.stream().map(RoomSlope::effect).toList();
    }

    private void add(PooledRoom room) {
        int sessions = room.sessions().size();
        double[] humidity = new double[sessions];
        double[] outcome = new double[sessions];
        double[] weight = new double[sessions];
        for (int i = 0; i < sessions; i++) {
            PooledSession session = room.sessions().get(i);
            humidity[i] = session.moments().mean(0);
            outcome[i] = adjusted(session.moments());
            weight[i] = question.shared() ? 1 / shared(session.moments().n()) : 1;
        }
        int least = question.shared() ? 2 : LEAST_OWN_SESSIONS;
        if (sessions < least || range(humidity) < LEAST_RANGE_PCT / 10) {
            narrow.add(room.key());
            return;
        }
        WeightedLine line = WeightedLine.of(humidity, outcome, weight);
        double variance = question.shared() ? 1 / line.spread() : line.residual() / (sessions - 2) / line.spread();
        if (line.residual() <= 1e-20 * line.total() && !question.shared()) {
            exact.add(room.key());
        } else {
            slopes.add(new RoomSlope(room, line.slope(), variance));
        }
    }

    private double adjusted(Moments session) {
        double outcome = session.mean(session.columns() - 1);
        if (question.adjusted()) {
            outcome -= pooled(2) * session.mean(1) + pooled(3) * session.mean(2);
        }
        return outcome;
    }

    /** 0 for a column that the others determine. */
    private double pooled(int column) {
        return fit.orElseThrow().coefficient(column).map(Quantity::value).orElse(0.0);
    }

    private double shared(long trials) {
        NestedFit model = fit.orElseThrow();
        double counted = model.cautions().contains(Caution.MEANS_ONLY) ? 1 : trials;
        return model.sessionVariance().orElse(0) + model.sigma2() / counted;
    }

    private static double range(double[] values) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
        }
        return highest - lowest;
    }
}
