package org.tableweather.analyzers.standard.numeric;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Eigenvalues and orthonormal eigenvectors of a symmetric matrix, {@code H = Σ λᵢ vᵢ vᵢ'}.
 *
 * @param values λᵢ
 * @param vectors vᵢ in rows, in the order of the values
 */
public record SymmetricEigen(double[] values, double[][] vectors) {

    /**
     * Decomposes a symmetric matrix.
     *
     * @param matrix finite and symmetric, k × k with k ≥ 1
     * @throws ArithmeticException when the iteration does not settle
     */
    public static SymmetricEigen of(double[][] matrix) {
        int k = matrix.length;
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(k, true, true);
        if (!eigen.decompose(new DMatrixRMaj(matrix))) {
            throw new ArithmeticException("eigenvalues of a symmetric " + k + " x " + k + " matrix did not settle");
        }
        double[] values = new double[k];
        double[][] vectors = new double[k][];
        for (int i = 0; i < k; i++) {
            values[i] = eigen.getEigenvalue(i).getReal();
            vectors[i] = eigen.getEigenVector(i).getData().clone();
        }
        return new SymmetricEigen(values, vectors);
    }

    /** Index of the smallest eigenvalue. */
    public int smallest() {
        int smallest = 0;
        for (int i = 1; i < values.length; i++) {
            if (values[i] < values[smallest]) {
                smallest = i;
            }
        }
        return smallest;
    }

    /** max |λᵢ|. */
    public double largestMagnitude() {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    /**
     * Quadratic form of the pseudo-inverse, {@code Σ (vᵢ'g)² / λᵢ} over the eigenvalues above a share of the largest.
     *
     * @param g length k
     * @param share eigenvalues at or below {@code share · max |λ|} are left out
     */
    public double inverseForm(double[] g, double share) {
        double bound = share * largestMagnitude();
        double form = 0;
        for (int i = 0; i < values.length; i++) {
            if (values[i] > bound) {
                double along = dot(vectors[i], g);
                form += along * along / values[i];
            }
        }
        return form;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
