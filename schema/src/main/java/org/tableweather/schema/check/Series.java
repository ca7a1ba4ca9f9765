package org.tableweather.schema.check;

/** Outcomes of one shot in the order of the trials, with what one or two passes over them tell. */
final class Series {
    private static final int LEAST_FOR_TREND = 12;
    private static final double TREND = 0.9;
    /** Half-width of the bracket in which the median is sought, in standard deviations. */
    private static final double BRACKET = 0.15;

    private final double[] values;
    private final int size;
    private final double mean;
    private final double squares;
    private final double moment;
    private final double low;
    private final double high;

    private Series(double[] values, int size, double[] sums) {
        this.values = values;
        this.size = size;
        double shift = sums[0] / size;
        this.mean = values[0] + shift;
        this.squares = Math.max(0, sums[1] - sums[0] * shift);
        this.moment = sums[2];
        this.low = sums[3];
        this.high = sums[4];
    }

    /** Of the first so many values, at least one; they must not change while the series is asked. */
    static Series of(double[] values, int size) {
        double origin = values[0];
        double middle = (size - 1) / 2.0;
        double sum = 0;
        double square = 0;
        double moment = 0;
        double low = origin;
        double high = origin;
        for (int i = 0; i < size; i++) {
            double value = values[i];
            double apart = value - origin;
            sum += apart;
            square += apart * apart;
            moment += (i - middle) * apart;
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return new Series(values, size, new double[] {sum, square, moment, low, high});
    }

    int size() {
        return size;
    }

    boolean isConstant() {
        return low == high;
    }

    boolean isMultipleOf(int step) {
        for (int i = 0; i < size; i++) {
            if (values[i] % step != 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether the values run with their order: correlation of at least 0.9 in size over at least 12. */
    boolean runs() {
        double order = size * ((double) size * size - 1) / 12;
        return size >= LEAST_FOR_TREND && squares > 0 && moment * moment >= TREND * TREND * squares * order;
    }

    /**
     * Whether it is certain, without sorting, that no value is an outlier: the median lies in a bracket around the mean, and
     * more than half of the values are farther from all of the bracket than any value can be from it by the limit of
     * {@link Outliers}. False says nothing.
     */
    boolean isTight() {
        double bracket = BRACKET * Math.sqrt(squares / size);
        double farthest = Math.max(high - mean, mean - low) + bracket;
        double needed = farthest * Outliers.NORMAL_MAD / Outliers.LIMIT + bracket;
        int below = 0;
        int above = 0;
        int far = 0;
        for (int i = 0; i < size; i++) {
            double apart = values[i] - mean;
            below += apart < -bracket ? 1 : 0;
            above += apart > bracket ? 1 : 0;
            far += Math.abs(apart) > needed ? 1 : 0;
        }
        // of an even number the median is the mean of the middle two: both must be in the bracket, and far
        int half = size / 2;
        return below < half && above < half && far > half + 1;
    }
}
