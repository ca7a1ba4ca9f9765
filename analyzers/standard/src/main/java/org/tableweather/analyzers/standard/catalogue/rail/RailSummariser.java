package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Cell;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Measured;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cushion;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's pairs. */
final class RailSummariser {

    /** The outcome's name in protocols. */
    static final String OUTCOME = "rebound_angle_deg";

    private static final double SPUN_RPS = 0.1;
    private static final double STEEPEST_DEG = 85;
    private static final double FASTEST_MPS = 20;
    private static final double LOWEST_NOSE = 0.1;
    private static final double HIGHEST_NOSE = 0.5;

    /** Pairs that differ by more are kept apart, so that the impact is nearly straight within a cell. */
    private static final double ANGLE_BIN_DEG = 5;

    private static final double SPEED_BIN_MPS = 0.25;

    private static final Comparator<Key> ORDER = Comparator.comparing(Key::shot)
            .thenComparing(Key::measured)
            .thenComparing(Key::angleBin)
            .thenComparing(Key::speedBin);

    /** What the pairs of a cell have in common. */
    private record Key(String shot, Measured measured, long angleBin, long speedBin) {}

    private final SortedMap<Key, MomentsBuilder> builders = new TreeMap<>(ORDER);
    private long withoutPair;
    private long withoutClimate;
    private long withSideSpin;

    /** The summary of trials in any order: equal trials give equal bits. */
    static RailSummary of(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        CorrectedClimate.of(session).of(trials).forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        RailSummariser summariser = new RailSummariser();
        ordered.forEach(summariser::add);
        OptionalDouble nose = noseSine(session);
        return new RailSummary(
                summariser.cells(),
                nose.orElse(RailProperties.POOL_NOSE_SINE),
                nose.isPresent(),
                SessionTraits.of(session),
                ordered.size(),
                summariser.withoutPair,
                summariser.withoutClimate,
                summariser.withSideSpin,
                new SessionProtocolBuilder(Map.of(OUTCOME, Trial::reboundAngleDeg))
                        .ofOrdered(session.session(), ordered));
    }

    /** Empty when the height is not stated, or no nose could be there. */
    private static OptionalDouble noseSine(SessionRecord session) {
        OptionalDouble height =
                session.table().cushion().map(Cushion::noseHeightMm).orElse(OptionalDouble.empty());
        double ballMm = session.ballSet()
                .map(BallSet::diameterMm)
                .orElse(OptionalDouble.empty())
                .orElse(1000 * Ball.POOL.diameterM());
        if (height.isEmpty() || !(ballMm > 0)) {
            return OptionalDouble.empty();
        }
        double sine = RailProperties.noseSine(height.getAsDouble(), ballMm);
        return sine >= LOWEST_NOSE && sine <= HIGHEST_NOSE ? OptionalDouble.of(sine) : OptionalDouble.empty();
    }

    private void add(Trial trial) {
        double approach = trial.approachAngleDeg();
        double rebound = trial.reboundAngleDeg();
        if (!(approach >= 0 && approach <= STEEPEST_DEG && Math.abs(rebound) <= STEEPEST_DEG)) {
            withoutPair++;
            return;
        }
        double rhPct = trial.climate().rhPct();
        double tempC = trial.climate().tempC();
        if (!(rhPct >= 0 && rhPct <= 100 && Math.abs(tempC) <= 100)) {
            withoutClimate++;
            return;
        }
        if (Math.abs(trial.sideSpinRps()) > SPUN_RPS) {
            withSideSpin++;
            return;
        }
        double roll = Double.isNaN(trial.rollRatio()) ? 1 : trial.rollRatio();
        double speed = trial.approachSpeedMps();
        double ratio = trial.reboundSpeedMps() / speed;
        boolean arrives = speed > 0 && speed <= FASTEST_MPS;
        Measured measured =
                arrives && ratio > 0 && ratio <= 2 ? Measured.SPEEDS : arrives ? Measured.ARRIVAL : Measured.ANGLES;
        double[] row = {rhPct, tempC, approach, roll, rebound, speed, ratio};
        Key key = new Key(
                trial.shot(),
                measured,
                Math.round(approach / ANGLE_BIN_DEG),
                measured == Measured.ANGLES ? 0 : Math.round(speed / SPEED_BIN_MPS));
        builders.computeIfAbsent(key, each -> new MomentsBuilder(measured.columns))
                .add(row);
    }

    private List<Cell> cells() {
        List<Cell> cells = new ArrayList<>();
        builders.forEach((key, builder) -> cells.add(new Cell(key.shot(), key.measured(), builder.build())));
        return cells;
    }
}
