package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.decay.DecayPoint;

/**
 * What followed one change of the climate at one table.
 *
 * @param name room and time, for a legend
 * @param points ordered by time
 */
record ClimateStep(String name, List<DecayPoint> points) {

    /** One time more than there are levels. */
    private static final int FEWEST_TIMES = 3;

    ClimateStep {
        points = List.copyOf(points);
    }

    boolean isUsable() {
        return points.stream().mapToDouble(DecayPoint::hours).distinct().count() >= FEWEST_TIMES;
    }

    long trials() {
        return points.stream().mapToLong(DecayPoint::n).sum();
    }
}
