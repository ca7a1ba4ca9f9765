package org.tableweather.schema.geometry;

/**
 * Linear least squares {@code min ‖A·x − b‖} by Householder reflections with column exchange, which unlike the normal
 * equations does not square the condition of A.
 *
 * @source BusingerGolub1965
 */
final class LeastSquares {

    private final double[][] a;
    private final double[] b;
    private final int columns;
    private final int[] order;
    private int rank;

    /**
     * Solves at once.
     *
     * @param matrix rows × columns, rows ≥ columns; not changed
     * @param right rows; not changed
     * @param relativeTolerance a pivot below this part of the first one counts as zero
     */
    LeastSquares(double[][] matrix, double[] right, double relativeTolerance) {
        columns = matrix[0].length;
        a = new double[matrix.length][];
        order = new int[columns];
        for (int i = 0; i < matrix.length; i++) {
            a[i] = matrix[i].clone();
        }
        b = right.clone();
        for (int j = 0; j < columns; j++) {
            order[j] = j;
        }
        triangulate(relativeTolerance);
    }

    /** Whether the columns are independent. */
    boolean hasFullRank() {
        return rank == columns;
    }

    /** The solution; only of full rank. */
    double[] solution() {
        double[] y = b.clone();
        double[] x = new double[columns];
        for (int k = columns - 1; k >= 0; k--) {
            for (int j = k + 1; j < columns; j++) {
                y[k] -= a[k][j] * y[j];
            }
            y[k] /= a[k][k];
            x[order[k]] = y[k];
        }
        return x;
    }

    /** {@code (AᵀA)⁻¹ = P R⁻¹ R⁻ᵀ Pᵀ}; only of full rank. */
    double[][] inverseOfNormal() {
        double[][] inverse = inverseOfTriangle();
        double[][] result = new double[columns][columns];
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < columns; j++) {
                double sum = 0;
                for (int k = Math.max(i, j); k < columns; k++) {
                    sum += inverse[i][k] * inverse[j][k];
                }
                result[order[i]][order[j]] = sum;
            }
        }
        return result;
    }

    private double[][] inverseOfTriangle() {
        double[][] inverse = new double[columns][columns];
        for (int j = 0; j < columns; j++) {
            inverse[j][j] = 1 / a[j][j];
            for (int i = j - 1; i >= 0; i--) {
                double sum = 0;
                for (int k = i + 1; k <= j; k++) {
                    sum += a[i][k] * inverse[k][j];
                }
                inverse[i][j] = -sum / a[i][i];
            }
        }
        return inverse;
    }

    private void triangulate(double relativeTolerance) {
        double first = 0;
        for (int k = 0; k < columns; k++) {
            exchange(k, largestColumn(k));
            double norm = norm(k, k);
            first = k == 0 ? norm : first;
            if (!(norm > relativeTolerance * first)) {
                return;
            }
            reflect(k, a[k][k] > 0 ? -norm : norm);
            rank++;
        }
    }

    private int largestColumn(int from) {
        int largest = from;
        for (int j = from + 1; j < columns; j++) {
            largest = norm(from, j) > norm(from, largest) ? j : largest;
        }
        return largest;
    }

    private double norm(int fromRow, int column) {
        double sum = 0;
        for (int i = fromRow; i < a.length; i++) {
            sum += a[i][column] * a[i][column];
        }
        return Math.sqrt(sum);
    }

    private void exchange(int k, int j) {
        for (double[] row : a) {
            double kept = row[k];
            row[k] = row[j];
            row[j] = kept;
        }
        int kept = order[k];
        order[k] = order[j];
        order[j] = kept;
    }

    /** Reflects column k onto its first entry: with v = x − α·e the reflection is {@code I − v vᵀ / (α(α − x₀))}. */
    private void reflect(int k, double alpha) {
        double scale = alpha * (alpha - a[k][k]);
        a[k][k] -= alpha;
        for (int j = k + 1; j < columns; j++) {
            double dot = 0;
            for (int i = k; i < a.length; i++) {
                dot += a[i][k] * a[i][j];
            }
            for (int i = k; i < a.length; i++) {
                a[i][j] -= dot / scale * a[i][k];
            }
        }
        double dot = 0;
        for (int i = k; i < a.length; i++) {
            dot += a[i][k] * b[i];
        }
        for (int i = k; i < a.length; i++) {
            b[i] -= dot / scale * a[i][k];
            a[i][k] = 0;
        }
        a[k][k] = alpha;
    }
}
