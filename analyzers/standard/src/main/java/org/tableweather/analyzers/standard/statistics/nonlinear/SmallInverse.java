package org.tableweather.analyzers.standard.statistics.nonlinear;

/** Inverses of small positive definite matrices, in place. */
final class SmallInverse {

    private SmallInverse() {}

    /**
     * Replaces a matrix by its inverse (Gauss and Jordan, without pivoting).
     *
     * @return log of its determinant; NaN when a pivot is not above nought
     */
    static double of(double[][] matrix) {
        double log = 0;
        for (int k = 0; k < matrix.length; k++) {
            double pivot = matrix[k][k];
            if (!(pivot > 0)) {
                return Double.NaN;
            }
            log += StrictMath.log(pivot);
            matrix[k][k] = 1;
            for (int j = 0; j < matrix.length; j++) {
                matrix[k][j] /= pivot;
            }
            for (int i = 0; i < matrix.length; i++) {
                if (i != k) {
                    eliminate(matrix[i], matrix[k], k);
                }
            }
        }
        return log;
    }

    private static void eliminate(double[] row, double[] pivotRow, int k) {
        double factor = row[k];
        row[k] = 0;
        for (int j = 0; j < row.length; j++) {
            row[j] -= factor * pivotRow[j];
        }
    }
}
