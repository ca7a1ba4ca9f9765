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
    static final double LIMIT = 6;
    private static final int LEAST = 8;
    static final double NORMAL_MAD = 0.6745;

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
        Series series = Series.of(values, known);
        series(series, name, trials.get(members.first()), rows[members.first()], findings);
        if (series.isTight()) {
            return;
        }
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

    private static void series(Series series, String name, Trial first, int row, Findings findings) {
        Check check = series.isConstant()
                ? StatisticsChecks.NO_SCATTER
                : name.endsWith("_deg") && series.isMultipleOf(5)
                        ? StatisticsChecks.COARSE
                        : series.runs() ? StatisticsChecks.TREND : null;
        if (check != null) {
            findings.add(
                    check,
                    Place.cell("trials.csv", row, name),
                    first.shot(),
                    () -> series.size() + " outcomes of " + first.shot() + " in session " + first.session());
        }
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
                                + Math.round(medianReachMad[2] * 1e6) / 1e6);
            }
        }
    }
}
