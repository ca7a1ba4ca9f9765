package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;

/**
 * The wiggles of a natural cubic spline over fixed knots: columns that a straight line leaves over, scaled so that the sum of
 * squares of their coefficients is {@code ∫ f″²}. With the line they span all natural cubic splines over the knots; outside
 * the knots each goes on as a straight line.
 *
 * @source Green1994
 * @source Wood2017
 */
public final class CubicSpline {

    private static final double NULL_SHARE = 1e-10;

    private final double[] knots;
    private final double[][] curvature;
    private final double[][] wiggles;

    /**
     * Over these knots.
     *
     * @param knots rising, at least 3
     * @throws IllegalArgumentException for fewer, or when they do not rise
     */
    public CubicSpline(double... knots) {
        this.knots = knots.clone();
        for (int i = 1; i < knots.length; i++) {
            if (!(knots[i] > knots[i - 1])) {
                throw new IllegalArgumentException("knots must rise, got " + Arrays.toString(knots));
            }
        }
        if (knots.length < 3) {
            throw new IllegalArgumentException("a spline needs 3 knots, got " + Arrays.toString(knots));
        }
        int k = knots.length;
        DMatrixRMaj differences = differences();
        DMatrixRMaj bands = bands();
        DMatrixRMaj inverse = new DMatrixRMaj(k - 2, k - 2);
        CommonOps_DDRM.invert(bands, inverse);
        DMatrixRMaj second = new DMatrixRMaj(k - 2, k);
        CommonOps_DDRM.mult(inverse, differences, second);
        curvature = new double[k][k];
        for (int i = 0; i < k - 2; i++) {
            for (int j = 0; j < k; j++) {
                curvature[i + 1][j] = second.get(i, j);
            }
        }
        wiggles = wiggles(differences, second);
    }

    private DMatrixRMaj differences() {
        DMatrixRMaj d = new DMatrixRMaj(knots.length - 2, knots.length);
        for (int i = 0; i < knots.length - 2; i++) {
            d.set(i, i, 1 / gap(i));
            d.set(i, i + 1, -1 / gap(i) - 1 / gap(i + 1));
            d.set(i, i + 2, 1 / gap(i + 1));
        }
        return d;
    }

    private DMatrixRMaj bands() {
        int inner = knots.length - 2;
        DMatrixRMaj b = new DMatrixRMaj(inner, inner);
        for (int i = 0; i < inner; i++) {
            b.set(i, i, (gap(i) + gap(i + 1)) / 3);
            if (i + 1 < inner) {
                b.set(i, i + 1, gap(i + 1) / 6);
                b.set(i + 1, i, gap(i + 1) / 6);
            }
        }
        return b;
    }

    /** {@code U₊ λ₊^(−½)} of the penalty {@code D'B⁻¹D = U Λ U'}. */
    private double[][] wiggles(DMatrixRMaj differences, DMatrixRMaj second) {
        int k = knots.length;
        DMatrixRMaj penalty = new DMatrixRMaj(k, k);
        CommonOps_DDRM.multTransA(differences, second, penalty);
        double[][] rows = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                rows[i][j] = (penalty.get(i, j) + penalty.get(j, i)) / 2;
            }
        }
        SymmetricEigen eigen = SymmetricEigen.of(rows);
        double bound = NULL_SHARE * eigen.largestMagnitude();
        double[][] columns = new double[k - 2][];
        int at = 0;
        for (int i = 0; i < k; i++) {
            double value = eigen.values()[i];
            if (value > bound && at < k - 2) {
                double scale = 1 / Math.sqrt(value);
                columns[at++] = Arrays.stream(eigen.vectors()[i])
                        .map(entry -> scale * entry)
                        .toArray();
            }
        }
        return columns;
    }

    private double gap(int i) {
        return knots[i + 1] - knots[i];
    }

    /** Number of columns: knots less two. */
    public int columns() {
        return wiggles.length;
    }

    /** One column at a place. */
    public double at(int column, double x) {
        double[] values = valuesAt(x);
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum += values[i] * wiggles[column][i];
        }
        return sum;
    }

    /** All columns at a place. */
    public double[] at(double x) {
        double[] row = new double[columns()];
        double[] values = valuesAt(x);
        for (int column = 0; column < row.length; column++) {
            for (int i = 0; i < values.length; i++) {
                row[column] += values[i] * wiggles[column][i];
            }
        }
        return row;
    }

    /** What each knot's value weighs at a place. */
    private double[] valuesAt(double x) {
        int k = knots.length;
        int piece = 0;
        while (piece < k - 2 && x > knots[piece + 1]) {
            piece++;
        }
        double h = gap(piece);
        double right = knots[piece + 1] - x;
        double left = x - knots[piece];
        double[] row = new double[k];
        if (x < knots[0]) {
            add(row, piece, -left * h / 3, -left * h / 6);
        } else if (x > knots[k - 1]) {
            add(row, piece, -right * h / 6, -right * h / 3);
        } else {
            add(row, piece, (right * right * right / h - h * right) / 6, (left * left * left / h - h * left) / 6);
        }
        row[piece] += right / h;
        row[piece + 1] += left / h;
        return row;
    }

    private void add(double[] row, int piece, double first, double second) {
        for (int i = 0; i < row.length; i++) {
            row[i] += first * curvature[piece][i] + second * curvature[piece + 1][i];
        }
    }
}
