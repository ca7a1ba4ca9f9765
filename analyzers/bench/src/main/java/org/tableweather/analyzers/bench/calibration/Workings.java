package org.tableweather.analyzers.bench.calibration;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * What stands behind one default interval of the slope and behind the bands of a new room.
 *
 * @param slope estimated
 * @param standardError reported
 * @param df of the slope
 * @param slopeVariance estimated between rooms
 * @param newRoomDf mean over the places
 * @param slopeHeldByNormal whether normal quantiles would have held the true slope
 * @param newRoomHeldByNormal share of the places where they would have held the new room
 */
record Workings(
        double slope,
        double standardError,
        double df,
        double slopeVariance,
        double newRoomDf,
        boolean slopeHeldByNormal,
        double newRoomHeldByNormal) {

    static String inWords(List<Workings> all) {
        double mean = mean(all, Workings::slope);
        double scatter = Math.sqrt(mean(all, each -> (each.slope() - mean) * (each.slope() - mean)));
        double reported = Math.sqrt(mean(all, each -> each.standardError() * each.standardError()));
        double[] df = sorted(all, Workings::df);
        return String.format(
                Locale.ROOT,
                "Workings of the default: standard errors (root mean square) over the real scatter of slopes %.2f; room slope"
                        + " variance %.3f on average; degrees of freedom of the slope %.1f at the median, %.1f at the lowest"
                        + " tenth, of a new room %.1f at the median. Normal quantiles in place of t would reject a true null in"
                        + " %.1f %% and hold a new room in %.1f %%.%n",
                reported / scatter,
                mean(all, Workings::slopeVariance),
                df[df.length / 2],
                df[df.length / 10],
                sorted(all, Workings::newRoomDf)[df.length / 2],
                100 * mean(all, each -> each.slopeHeldByNormal() ? 0 : 1),
                100 * mean(all, Workings::newRoomHeldByNormal));
    }

    private static double mean(List<Workings> all, ToDoubleFunction<Workings> figure) {
        return all.stream().mapToDouble(figure).average().orElse(Double.NaN);
    }

    private static double[] sorted(List<Workings> all, ToDoubleFunction<Workings> figure) {
        double[] figures = all.stream().mapToDouble(figure).toArray();
        Arrays.sort(figures);
        return figures;
    }
}
