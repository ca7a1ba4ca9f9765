package org.tableweather.schema.check;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;

/**
 * Flags outcomes far from the others of their shot and session by the robust {@code z = 0.6745 |x − median| / MAD}.
 *
 * @source IglewiczHoaglin1993
 */
final class Outliers {
    private static final double LIMIT = 6;
    private static final int LEAST = 8;
    private static final double NORMAL_MAD = 0.6745;

    private Outliers() {}

    /**
     * Flags.
     *
     * @param trials of one session
     * @param members positions of the trials of one shot
     * @param rows row of each trial
     * @param findings takes what is found
     */
    static void check(List<Trial> trials, List<Integer> members, int[] rows, Findings findings) {
        if (members.size() < LEAST) {
            return;
        }
        column(trials, members, rows, "rebound_angle_deg", Trial::reboundAngleDeg, findings);
        column(trials, members, rows, "final_rebound_angle_deg", Trial::finalReboundAngleDeg, findings);
        column(trials, members, rows, "landing_offset_dia", Trial::landingOffsetDia, findings);
    }

    private static void column(
            List<Trial> trials,
            List<Integer> members,
            int[] rows,
            String name,
            ToDoubleFunction<Trial> outcome,
            Findings findings) {
        double[] sorted = new double[members.size()];
        int known = 0;
        for (int member : members) {
            double value = outcome.applyAsDouble(trials.get(member));
            if (!Double.isNaN(value)) {
                sorted[known++] = value;
            }
        }
        if (known < LEAST) {
            return;
        }
        Arrays.sort(sorted, 0, known);
        double median = middle(sorted, known);
        double low = sorted[0];
        double high = sorted[known - 1];
        for (int i = 0; i < known; i++) {
            sorted[i] = Math.abs(sorted[i] - median);
        }
        Arrays.sort(sorted, 0, known);
        double mad = middle(sorted, known);
        double reach = LIMIT * mad / NORMAL_MAD;
        if (mad > 0 && (low < median - reach || high > median + reach)) {
            flag(trials, members, rows, name, outcome, new double[] {median, reach, mad}, findings);
        }
    }

    private static double middle(double[] sorted, int size) {
        return size % 2 == 1 ? sorted[size / 2] : (sorted[size / 2 - 1] + sorted[size / 2]) / 2;
    }

    private static void flag(
            List<Trial> trials,
            List<Integer> members,
            int[] rows,
            String name,
            ToDoubleFunction<Trial> outcome,
            double[] medianReachMad,
            Findings findings) {
        double median = medianReachMad[0];
        for (int member : members) {
            double value = outcome.applyAsDouble(trials.get(member));
            if (Math.abs(value - median) > medianReachMad[1]) {
                findings.add(
                        StatisticsChecks.OUTLIER,
                        Place.cell("trials.csv", rows[member], name),
                        Double.toString(value),
                        () -> value + " is far from the median " + median + " of "
                                + trials.get(member).shot() + " in this session, of which half lie within "
                                + medianReachMad[2]);
            }
        }
    }
}
