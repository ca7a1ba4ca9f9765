package org.tableweather.schema.check;

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
    static void check(List<Trial> trials, Members members, int[] rows, Findings findings) {
        if (members.size() < LEAST) {
            return;
        }
        column(trials, members, rows, "rebound_angle_deg", Trial::reboundAngleDeg, findings);
        column(trials, members, rows, "final_rebound_angle_deg", Outliers::otherFinalAngle, findings);
        column(trials, members, rows, "landing_offset_dia", Trial::landingOffsetDia, findings);
    }

    /** The final angle where it says more than the first. */
    private static double otherFinalAngle(Trial trial) {
        double last = trial.finalReboundAngleDeg();
        return last == trial.reboundAngleDeg() ? Double.NaN : last;
    }

    private static void column(
            List<Trial> trials,
            Members members,
            int[] rows,
            String name,
            ToDoubleFunction<Trial> outcome,
            Findings findings) {
        double[] values = new double[members.size()];
        int known = 0;
        for (int i = 0; i < members.size(); i++) {
            double value = outcome.applyAsDouble(trials.get(members.get(i)));
            if (!Double.isNaN(value)) {
                values[known++] = value;
            }
        }
        if (known < LEAST) {
            return;
        }
        scatter(values, known, name, trials.get(members.first()), rows[members.first()], findings);
        double median = median(values, known);
        double farthest = 0;
        for (int i = 0; i < known; i++) {
            values[i] = Math.abs(values[i] - median);
            farthest = Math.max(farthest, values[i]);
        }
        double mad = median(values, known);
        double reach = LIMIT * mad / NORMAL_MAD;
        if (mad > 0 && farthest > reach) {
            flag(trials, members, rows, name, outcome, new double[] {median, reach, mad}, findings);
        }
    }

    /** What the values say as a series, in the order of the trials. */
    private static void scatter(double[] values, int known, String name, Trial first, int row, Findings findings) {
        boolean equal = true;
        boolean coarse = name.endsWith("_deg");
        for (int i = 0; i < known; i++) {
            equal &= values[i] == values[0];
            coarse = coarse && values[i] % 5 == 0;
        }
        Check check = equal
                ? StatisticsChecks.NO_SCATTER
                : coarse ? StatisticsChecks.COARSE : runs(values, known) ? StatisticsChecks.TREND : null;
        if (check != null) {
            findings.add(
                    check,
                    Place.cell("trials.csv", row, name),
                    first.shot(),
                    () -> known + " outcomes of " + first.shot() + " in session " + first.session());
        }
    }

    /** Whether values run with their order: correlation of at least 0.9 in size over at least 12. */
    static boolean runs(double[] values, int known) {
        if (known < 12) {
            return false;
        }
        double sum = 0;
        double moment = 0;
        double middle = (known - 1) / 2.0;
        for (int i = 0; i < known; i++) {
            sum += values[i];
            moment += (i - middle) * values[i];
        }
        double mean = sum / known;
        double squares = 0;
        for (int i = 0; i < known; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
        }
        double order = known * ((double) known * known - 1) / 12;
        return moment * moment >= 0.81 * squares * order;
    }

    /** The median; the values are put in another order. */
    static double median(double[] values, int size) {
        double upper = select(values, size, size / 2);
        if (size % 2 == 1) {
            return upper;
        }
        double lower = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size / 2; i++) {
            lower = Math.max(lower, values[i]);
        }
        return lower + (upper - lower) / 2;
    }

    /** The value that sorting would put at this place: by splitting at the middle one of three, again and again. */
    private static double select(double[] values, int size, int place) {
        int low = 0;
        int high = size - 1;
        while (low < high) {
            double pivot = middle(values[low], values[low + high >>> 1], values[high]);
            int i = low;
            int j = high;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double swapped = values[i];
                    values[i++] = values[j];
                    values[j--] = swapped;
                }
            }
            if (place <= j) {
                high = j;
            } else if (place >= i) {
                low = i;
            } else {
                return values[place];
            }
        }
        return values[place];
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    private static void flag(
            List<Trial> trials,
            Members members,
            int[] rows,
            String name,
            ToDoubleFunction<Trial> outcome,
            double[] medianReachMad,
            Findings findings) {
        double median = medianReachMad[0];
        for (int i = 0; i < members.size(); i++) {
            int member = members.get(i);
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
