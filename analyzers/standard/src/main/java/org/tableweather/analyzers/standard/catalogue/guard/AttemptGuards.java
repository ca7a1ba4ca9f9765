package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.shape.KStatistics;
import org.tableweather.analyzers.standard.statistics.shape.PooledShape;

/** Were attempts left out? */
final class AttemptGuards {

    /** Fewer tell no shape. */
    private static final long FEWEST = 30;

    /** 1 % points of the normal distribution, on one side and on both. */
    private static final double KURTOSIS_BOUND = -2.326;

    private static final double SKEWNESS_BOUND = 2.576;
    private static final double TAIL = 0.025;
    private static final double HIGHEST_RATE = 0.95;

    private final GuardedPool pool;
    private final List<GuardFinding> found = new ArrayList<>();

    AttemptGuards(GuardedPool pool) {
        this.pool = pool;
    }

    List<GuardFinding> findings() {
        leftOut();
        missingNumbers();
        shape();
        makeRate();
        return found;
    }

    private void leftOut() {
        long stated = pool.sessions.stream()
                .filter(session -> session.protocol().statedIncomplete())
                .count();
        if (stated > 0) {
            found.add(new GuardFinding(
                    Guard.LEFT_OUT,
                    stated,
                    0,
                    stated + " of " + Figures.counted(pool.sessions.size(), "session")
                            + " say that not every attempt was logged: the mean may be that of the better ones."));
        }
    }

    private void missingNumbers() {
        long missing = 0;
        long numbered = 0;
        List<String> where = new ArrayList<>();
        for (GuardedSession session : pool.sessions) {
            Numbering numbering = session.protocol().numbering();
            missing += numbering.missing();
            numbered += numbering.numbered();
            if (numbering.missing() > 0) {
                where.add(session.session());
            }
        }
        if (missing > 0) {
            found.add(new GuardFinding(
                    Guard.MISSING_NUMBERS,
                    missing,
                    0,
                    Figures.counted(missing, "number") + " missing among " + numbered
                            + " numbered attempts: attempts may have been left out. Sessions: " + Figures.listed(where)
                            + "."));
        }
    }

    private void shape() {
        List<KStatistics> groups = pool.scatters().stream()
                .filter(scatter -> scatter.n() >= 4)
                .map(scatter -> new KStatistics(scatter.n(), scatter.second(), scatter.third(), scatter.fourth()))
                .toList();
        PooledShape.of(groups).fold(this::judge, refusal -> Boolean.FALSE);
    }

    private Boolean judge(PooledShape shape) {
        if (shape.n() < FEWEST) {
            return Boolean.FALSE;
        }
        if (shape.kurtosisZ() < KURTOSIS_BOUND) {
            found.add(new GuardFinding(
                    Guard.CUT_ON_BOTH_SIDES,
                    shape.kurtosisZ(),
                    KURTOSIS_BOUND,
                    "The scatter of " + pool.outcome + " within sessions ends too soon on both sides (excess kurtosis "
                            + Figures.fixed(shape.excessKurtosis(), 2) + ", " + Figures.fixed(-shape.kurtosisZ(), 1)
                            + " standard errors below that of normal scatter)."));
        }
        if (Math.abs(shape.skewnessZ()) > SKEWNESS_BOUND) {
            found.add(new GuardFinding(
                    Guard.CUT_ON_ONE_SIDE,
                    shape.skewnessZ(),
                    SKEWNESS_BOUND,
                    "The scatter of " + pool.outcome + " within sessions ends sooner "
                            + (shape.skewnessZ() > 0 ? "below" : "above") + " than on the other side (skewness "
                            + Figures.fixed(shape.skewness(), 2) + ", " + Figures.fixed(shape.skewnessZ(), 1)
                            + " standard errors from that of normal scatter)."));
        }
        return Boolean.TRUE;
    }

    // a ramp may well make every one
    private void makeRate() {
        List<ShotProtocol> shots = pool.sessions.stream()
                .filter(session -> !session.protocol().delivery().equals("ramp"))
                .flatMap(session -> session.protocol().shot(pool.shot).stream())
                .toList();
        long made = shots.stream().mapToLong(ShotProtocol::made).sum();
        long missed = shots.stream().mapToLong(ShotProtocol::missed).sum();
        double lower = lowerRate(made, missed);
        if (lower > HIGHEST_RATE) {
            found.add(new GuardFinding(
                    Guard.MADE_TOO_OFTEN,
                    lower,
                    HIGHEST_RATE,
                    made + " of " + (made + missed) + " attempts of shot " + pool.shot
                            + " with a cue are stated as made: at least " + Figures.fixed(100 * lower, 1)
                            + " % in the long run, more than all attempts would give."));
        }
    }

    /**
     * Lower end of the exact one-sided 97.5 % interval: quantile of the beta distribution of (made, missed + 1).
     *
     * @source Clopper1934
     */
    static double lowerRate(long made, long missed) {
        return made == 0 ? 0 : new BetaDistribution(made, missed + 1).inverseCumulativeProbability(TAIL);
    }
}
