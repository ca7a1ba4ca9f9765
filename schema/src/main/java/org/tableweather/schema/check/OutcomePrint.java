package org.tableweather.schema.check;

import java.util.List;
import org.tableweather.schema.record.Trial;

/** Outcomes as numbers to be compared: whether trials, or whole sessions, repeat each other. */
public final class OutcomePrint {
    private static final int LEAST = 8;

    private OutcomePrint() {}

    /** Whether two trials of one shot have the same outcomes, at least two of them, one of them no round number of degrees. */
    static boolean repeats(Trial a, Trial b) {
        if (differ(a.reboundAngleDeg(), b.reboundAngleDeg())
                || differ(a.landingOffsetDia(), b.landingOffsetDia())
                || differ(a.finalReboundAngleDeg(), b.finalReboundAngleDeg())
                || differ(a.reboundSpeedMps(), b.reboundSpeedMps())
                || differ(a.runOutM(), b.runOutM())
                || differ(a.spreadNearestMm(), b.spreadNearestMm())) {
            return false;
        }
        double last = a.finalReboundAngleDeg();
        int known = known(a.reboundAngleDeg())
                + known(a.landingOffsetDia())
                + (last == a.reboundAngleDeg() ? 0 : known(last))
                + known(a.reboundSpeedMps())
                + known(a.runOutM())
                + known(a.spreadNearestMm());
        return known >= 2 && a.shot().equals(b.shot());
    }

    private static boolean differ(double a, double b) {
        return a != b && (a == a || b == b);
    }

    private static int known(double value) {
        return value == value ? 1 : 0;
    }

    /**
     * A 64-bit hash of all measured outcomes in order.
     *
     * @param trials of one session, in canonical order
     * @return 0 when there are too few outcomes to tell sessions apart
     */
    public static long of(List<Trial> trials) {
        long hash = 1;
        int known = 0;
        for (Trial trial : trials) {
            long before = hash;
            hash = mixed(hash, trial.reboundAngleDeg());
            hash = mixed(hash, trial.finalReboundAngleDeg());
            hash = mixed(hash, trial.landingOffsetDia());
            hash = mixed(hash, trial.runOutM());
            hash = mixed(hash, trial.spreadNearestMm());
            hash = mixed(hash, trial.objectAngleDeg());
            hash = mixed(hash, trial.deflectionAngleDeg());
            hash = mixed(hash, trial.hopHeightMm());
            known += hash == before ? 0 : 1;
        }
        return known < LEAST ? 0 : hash;
    }

    private static long mixed(long hash, double value) {
        if (value != value) {
            return hash;
        }
        long next = (hash ^ Double.doubleToRawLongBits(value)) * 0x9E3779B97F4A7C15L;
        return next ^ next >>> 29;
    }
}
