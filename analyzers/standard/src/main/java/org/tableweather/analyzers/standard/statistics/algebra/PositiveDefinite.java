package org.tableweather.analyzers.standard.statistics.algebra;

import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.decomposition.TriangularSolver_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * A symmetric positive definite matrix by its Cholesky factor: {@code A = L L'}. The matrix is scaled to a unit diagonal
 * first, so that columns in unlike units are judged alike.
 */
public final class PositiveDefinite {

    private final DMatrixRMaj lower;
    private final DMatrixRMaj lowerInverse;

    private PositiveDefinite(DMatrixRMaj lower) {
        this.lower = lower;
        this.lowerInverse = lower.copy();
        TriangularSolver_DDRM.invertLower(lowerInverse.data, lower.numRows);
    }

    /**
     * Factors a matrix.
     *
     * @param matrix symmetric, k × k, k ≥ 1; the lower triangle is read
     * @param share smallest part of a column's square that the columns before it must leave unexplained, in (0, 1)
     * @return empty when a column leaves less than that, or a diagonal entry is not above zero
     */
    public static Optional<PositiveDefinite> of(double[][] matrix, double share) {
        int k = matrix.length;
        double[] scale = new double[k];
        for (int i = 0; i < k; i++) {
            scale[i] = Math.sqrt(matrix[i][i]);
            if (!(scale[i] > 0)) {
                return Optional.empty();
            }
        }
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(k, true);
        if (!cholesky.decompose(unitDiagonal(matrix, scale))) {
            return Optional.empty();
        }
        return scaledBack(cholesky.getT(null), scale, share);
    }

    private static DMatrixRMaj unitDiagonal(double[][] matrix, double[] scale) {
        int k = scale.length;
        DMatrixRMaj scaled = new DMatrixRMaj(k, k);
        for (int i = 0; i < k; i++) {
            for (int j = 0; j <= i; j++) {
                double entry = matrix[i][j] / scale[i] / scale[j];
                scaled.set(i, j, entry);
                scaled.set(j, i, entry);
            }
        }
        return scaled;
    }

    private static Optional<PositiveDefinite> scaledBack(DMatrixRMaj factor, double[] scale, double share) {
        for (int i = 0; i < scale.length; i++) {
            double pivot = factor.get(i, i);
            if (!(pivot * pivot >= share)) {
                return Optional.empty();
            }
            for (int j = 0; j <= i; j++) {
                factor.set(i, j, factor.get(i, j) * scale[i]);
            }
        }
        return Optional.of(new PositiveDefinite(factor));
    }

    /** log |A|. */
    public double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < lower.numRows; i++) {
            sum += 2 * StrictMath.log(lower.get(i, i));
        }
        return sum;
    }

    /** {@code L⁻¹ b}. */
    public double[] whiten(double[] b) {
        int k = lower.numRows;
        double[] result = new double[k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j <= i; j++) {
                result[i] += lowerInverse.get(i, j) * b[j];
            }
        }
        return result;
    }

    /** {@code L⁻ᵀ b}, so that {@code A⁻¹ b} is {@code unwhiten(whiten(b))}. */
    public double[] unwhiten(double[] b) {
        int k = lower.numRows;
        double[] result = new double[k];
        for (int i = 0; i < k; i++) {
            for (int j = i; j < k; j++) {
                result[i] += lowerInverse.get(j, i) * b[j];
            }
        }
        return result;
    }

    /** {@code L⁻¹ S L⁻ᵀ} of a symmetric matrix. */
    public double[][] whiten(double[][] symmetric) {
        DMatrixRMaj half = new DMatrixRMaj(lower.numRows, lower.numRows);
        DMatrixRMaj whole = new DMatrixRMaj(lower.numRows, lower.numRows);
        CommonOps_DDRM.mult(lowerInverse, new DMatrixRMaj(symmetric), half);
        CommonOps_DDRM.multTransB(half, lowerInverse, whole);
        return rows(whole);
    }

    /** {@code L⁻ᵀ S L⁻¹} of a symmetric matrix: with S the identity, the inverse of A. */
    public double[][] sandwich(double[][] symmetric) {
        DMatrixRMaj half = new DMatrixRMaj(lower.numRows, lower.numRows);
        DMatrixRMaj whole = new DMatrixRMaj(lower.numRows, lower.numRows);
        CommonOps_DDRM.multTransA(lowerInverse, new DMatrixRMaj(symmetric), half);
        CommonOps_DDRM.mult(half, lowerInverse, whole);
        return rows(whole);
    }

    /** {@code A⁻¹ b}. */
    public double[] solve(double[] b) {
        return unwhiten(whiten(b));
    }

    /** {@code A⁻¹}. */
    public double[][] inverse() {
        DMatrixRMaj inverse = new DMatrixRMaj(lower.numRows, lower.numRows);
        CommonOps_DDRM.multTransA(lowerInverse, lowerInverse, inverse);
        return rows(inverse);
    }

    private static double[][] rows(DMatrixRMaj matrix) {
        double[][] rows = new double[matrix.numRows][matrix.numCols];
        for (int i = 0; i < matrix.numRows; i++) {
            for (int j = 0; j < matrix.numCols; j++) {
                rows[i][j] = matrix.get(i, j);
            }
        }
        return rows;
    }
}
