package org.tableweather.analyzers.standard.catalogue.rooms;

/**
 * A straight line through weighted points.
 *
 * @param slope {@code Σ w (x − x̄)(y − ȳ) / Σ w (x − x̄)²}
 * @param spread {@code Σ w (x − x̄)²}
 * @param residual {@code Σ w (y − line)²}
 * @param total {@code Σ w (y − ȳ)²}
 */
record WeightedLine(double slope, double spread, double residual, double total) {

    static WeightedLine of(double[] x, double[] y, double[] w) {
        double xMean = mean(x, w);
        double yMean = mean(y, w);
        double spread = 0;
        double product = 0;
        double total = 0;
        for (int i = 0; i < x.length; i++) {
            spread += w[i] * (x[i] - xMean) * (x[i] - xMean);
            product += w[i] * (x[i] - xMean) * (y[i] - yMean);
            total += w[i] * (y[i] - yMean) * (y[i] - yMean);
        }
        double slope = product / spread;
        double residual = 0;
        for (int i = 0; i < x.length; i++) {
            double apart = y[i] - yMean - slope * (x[i] - xMean);
            residual += w[i] * apart * apart;
        }
        return new WeightedLine(slope, spread, residual, total);
    }

    /** About the first value, so that a large common offset costs no digits. */
    private static double mean(double[] values, double[] w) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < values.length; i++) {
            sum += w[i] * (values[i] - values[0]);
            weights += w[i];
        }
        return values[0] + sum / weights;
    }
}
