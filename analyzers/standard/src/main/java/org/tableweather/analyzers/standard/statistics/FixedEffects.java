package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Generalised least squares from reduced cross-products: {@code b = P[x,x]⁻¹ P[x,y]}, {@code r² = P[y,y] − P[y,x] b}.
 *
 * <p>Columns of a penalised group are taken times τ, with 1 added to their diagonal: that is Henderson's system
 * {@code P[xq,xq] + diag(0, 1/τ²)} in a form that stands at τ = 0; its inverse serves where P[x,x]⁻¹ would.
 *
 * @source Henderson1975
 */
final class FixedEffects {

    /** b. */
    final double[] coefficients;
    /** P[x,x]⁻¹, p × p by rows. */
    final double[] inverse;
    /** The vector c that makes a residual of a row, −b and 1. */
    final double[] contrast;

    /** r². */
    double residual;
    /** log|P[x,x]|. */
    double logDeterminant;

    /** Degrees of freedom that the penalised columns use, {@code Σ (1 − [(P̃ + I)⁻¹]ᵢᵢ)}, per group. */
    final double[] effective;

    private final int size;
    private final int[] groupOf;
    private final double[] scales;
    private final LinearSolverDense<DMatrixRMaj> solver;
    private final DMatrixRMaj products;
    private final DMatrixRMaj inverted;
    private final DMatrixRMaj right;
    private final DMatrixRMaj solution;

    FixedEffects(int size) {
        this(size, 0, new int[0]);
    }

    /**
     * For columns of which some are penalised.
     *
     * @param groupOf for each column its group from 0, or −1 for none; empty for none at all
     */
    FixedEffects(int size, int groups, int[] groupOf) {
        this.size = size;
        this.groupOf = groupOf;
        effective = new double[groups];
        scales = new double[groups];
        solver = LinearSolverFactory_DDRM.chol(size);
        products = new DMatrixRMaj(size, size);
        inverted = new DMatrixRMaj(size, size);
        right = new DMatrixRMaj(size, 1);
        solution = new DMatrixRMaj(size, 1);
        coefficients = solution.data;
        inverse = inverted.data;
        contrast = new double[size + 1];
        contrast[size] = 1;
    }

    /**
     * Solves.
     *
     * @param total P, (p + 1) × (p + 1) by rows, the response last
     * @return false when it is not positive definite, or nothing is left of the response
     */
    boolean solve(double[] total) {
        int width = size + 1;
        for (int i = 0; i < size; i++) {
            System.arraycopy(total, i * width, products.data, i * size, size);
            right.data[i] = total[i * width + size];
        }
        if (effective.length > 0) {
            penalise();
        }
        if (!solver.setA(products)) {
            return false;
        }
        solver.solve(right, solution);
        solver.invert(inverted);
        logDeterminant = logDeterminant();
        if (effective.length > 0) {
            unscale();
        }
        residual = total[size * width + size];
        for (int i = 0; i < size; i++) {
            residual -= coefficients[i] * total[i * width + size];
            contrast[i] = -coefficients[i];
        }
        return residual > 0;
    }

    /** Sets τ of a group for the next solution. */
    void smooth(int group, double tau) {
        scales[group] = tau;
    }

    private double scale(int column) {
        return groupOf[column] < 0 ? 1 : scales[groupOf[column]];
    }

    private void penalise() {
        for (int i = 0; i < size; i++) {
            right.data[i] *= scale(i);
            for (int j = 0; j < size; j++) {
                products.data[i * size + j] *= scale(i) * scale(j);
            }
            products.data[i * size + i] += groupOf[i] < 0 ? 0 : 1;
        }
    }

    private void unscale() {
        Arrays.fill(effective, 0);
        for (int i = 0; i < size; i++) {
            if (groupOf[i] >= 0) {
                effective[groupOf[i]] += 1 - inverse[i * size + i];
            }
        }
        for (int i = 0; i < size; i++) {
            coefficients[i] *= scale(i);
            for (int j = 0; j < size; j++) {
                inverse[i * size + j] *= scale(i) * scale(j);
            }
        }
    }

    private double logDeterminant() {
        CholeskyDecomposition_F64<DMatrixRMaj> cholesky = solver.getDecomposition();
        DMatrixRMaj factor = cholesky.getT(null);
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += 2 * StrictMath.log(factor.get(i, i));
        }
        return sum;
    }

    /** {@code l' P[x,x]⁻¹ k}, both at offsets in one array. */
    double inverseForm(double[] array, int first, int second) {
        double form = 0;
        for (int i = 0; i < size; i++) {
            double row = 0;
            for (int j = 0; j < size; j++) {
                row += inverse[i * size + j] * array[second + j];
            }
            form += row * array[first + i];
        }
        return form;
    }

    /** {@code l' P[x,x]⁻¹ k}. */
    double inverseForm(double[] l, double[] k) {
        double form = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                form += l[i] * inverse[i * size + j] * k[j];
            }
        }
        return form;
    }

    /** The columns of a penalised group, ascending. */
    int[] columns(int group) {
        return IntStream.range(0, size)
                .filter(column -> groupOf[column] == group)
                .toArray();
    }

    /** Row times c: what the coefficients leave of a row at an offset in an array. */
    double leave(double[] array, int offset) {
        double sum = 0;
        for (int i = 0; i <= size; i++) {
            sum += array[offset + i] * contrast[i];
        }
        return sum;
    }
}
