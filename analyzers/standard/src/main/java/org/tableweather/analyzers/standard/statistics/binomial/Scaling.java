package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.List;

/**
 * Columns to mean 0 and standard deviation 1 over attempts while the search runs, coefficients back afterwards.
 *
 * @param centre means
 * @param spread standard deviations; 1 for a column that never changes
 */
record Scaling(double[] centre, double[] spread) {

    static Scaling of(List<BinomialCell> cells) {
        int columns = cells.get(0).columns().length;
        double[] centre = new double[columns];
        double[] squares = new double[columns];
        double total = 0;
        for (BinomialCell cell : cells) {
            double[] values = cell.columns();
            total += cell.attempts();
            for (int k = 0; k < columns; k++) {
                double apart = values[k] - centre[k];
                centre[k] += apart * cell.attempts() / total;
                squares[k] += apart * (values[k] - centre[k]) * cell.attempts();
            }
        }
        double[] spread = new double[columns];
        for (int k = 0; k < columns; k++) {
            spread[k] = squares[k] > 0 ? Math.sqrt(squares[k] / total) : 1;
        }
        return new Scaling(centre, spread);
    }

    /** A row with the one in front. */
    double[] row(double[] columns) {
        double[] row = new double[columns.length + 1];
        row[0] = 1;
        for (int k = 0; k < columns.length; k++) {
            row[k + 1] = (columns[k] - centre[k]) / spread[k];
        }
        return row;
    }

    /** Weights on the scaled coefficients that give the mixture {@code w'β} of the plain ones. */
    double[] weights(double[] plain) {
        double[] weights = plain.clone();
        for (int k = 0; k < centre.length; k++) {
            weights[k + 1] = (plain[k + 1] - plain[0] * centre[k]) / spread[k];
        }
        return weights;
    }
}
