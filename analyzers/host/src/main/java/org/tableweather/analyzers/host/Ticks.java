package org.tableweather.analyzers.host;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Stream;

/**
 * An axis with ticks at round values.
 *
 * @param low end of the axis
 * @param high end of the axis, more than {@code low}
 * @param step between ticks: 1, 2 or 5 times a power of ten
 */
record Ticks(double low, double high, double step) {

    /** An axis over all finite values, with about so many ticks. */
    static Ticks over(Stream<Double> values, int about) {
        DoubleSummaryStatistics range =
                values.filter(Double::isFinite).mapToDouble(Double::doubleValue).summaryStatistics();
        if (range.getCount() == 0) {
            return new Ticks(0, 1, 1);
        }
        double low = range.getMin();
        double high = range.getMax() > low ? range.getMax() : low + 1;
        return new Ticks(low, high, roundStep((high - low) / about));
    }

    private static double roundStep(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double factor : new double[] {1, 2, 5}) {
            if (factor * power >= least) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    /** The round values on the axis. */
    List<Double> values() {
        List<Double> values = new ArrayList<>();
        for (double i = Math.ceil(low / step); i * step <= high; i++) {
            values.add(i * step);
        }
        return values;
    }

    /** A tick's value in as many digits as the step needs. */
    String label(double tick) {
        int digits = (int) Math.max(0, -Math.floor(Math.log10(step)));
        return BigDecimal.valueOf(tick).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
    }
}
