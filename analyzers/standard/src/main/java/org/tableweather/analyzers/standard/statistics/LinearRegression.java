package org.tableweather.analyzers.standard.statistics;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Least squares from {@link Moments}: {@code b = M[x,x]⁻¹ M[x,y]}, {@code rss = M[y,y] − b'M[x,y]}, the columns scaled to a
 * unit diagonal for the Cholesky factor.
 *
 * <p>With an intercept the centred cross-products are used, through the origin {@code M + n a a'}. Cross-products square
 * the condition number of the columns: take covariates from an agreed origin in an agreed unit before forming powers.
 *
 * @param coefficients intercept first where there is one, then in the order of the columns
 * @param covariance of these
 * @param residualDf rows less coefficients
 * @param residualSumOfSquares rss
 * @source Chan1983
 */
public record LinearRegression(
        double[] coefficients, double[][] covariance, long residualDf, double residualSumOfSquares) {

    /**
     * With an intercept.
     *
     * @param moments the response is the last column
     * @throws IllegalArgumentException when a column is determined by the others, or there are too few rows
     */
    public static LinearRegression withIntercept(Moments moments) {
        int columns = moments.columns() - 1;
        long df = degreesOfFreedom(moments, columns + 1);
        Solution slopes = new Solution(products(moments, 0), columns);
        double[] coefficients = new double[columns + 1];
        double[][] covariance = new double[columns + 1][columns + 1];
        double variance = slopes.rest / df;
        coefficients[0] = moments.mean(columns);
        covariance[0][0] = variance / moments.n();
        for (int i = 0; i < columns; i++) {
            coefficients[i + 1] = slopes.coefficients[i];
            coefficients[0] -= slopes.coefficients[i] * moments.mean(i);
            for (int j = 0; j < columns; j++) {
                double entry = variance * slopes.inverse(i, j);
                covariance[i + 1][j + 1] = entry;
                covariance[i + 1][0] -= entry * moments.mean(j);
                covariance[0][0] += moments.mean(i) * entry * moments.mean(j);
            }
            covariance[0][i + 1] = covariance[i + 1][0];
        }
        return new LinearRegression(coefficients, covariance, df, slopes.rest);
    }

    /**
     * Through the origin.
     *
     * @param moments the response is the last column
     * @throws IllegalArgumentException when a column is determined by the others, or there are too few rows
     */
    public static LinearRegression throughOrigin(Moments moments) {
        int columns = moments.columns() - 1;
        long df = degreesOfFreedom(moments, columns);
        Solution slopes = new Solution(products(moments, moments.n()), columns);
        double[][] covariance = new double[columns][columns];
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < columns; j++) {
                covariance[i][j] = slopes.rest / df * slopes.inverse(i, j);
            }
        }
        return new LinearRegression(slopes.coefficients, covariance, df, slopes.rest);
    }

    /** Standard error of a coefficient. */
    public double standardError(int coefficient) {
        return Math.sqrt(covariance[coefficient][coefficient]);
    }

    /** Residual standard deviation. */
    public double residualDeviation() {
        return Math.sqrt(residualSumOfSquares / residualDf);
    }

    private static long degreesOfFreedom(Moments moments, int coefficients) {
        if (moments.n() <= coefficients) {
            throw new IllegalArgumentException(
                    moments.n() + " rows for " + coefficients + " coefficients: add rows or leave out columns");
        }
        return moments.n() - coefficients;
    }

    private static double[][] products(Moments moments, double weight) {
        double[][] products = new double[moments.columns()][moments.columns()];
        for (int i = 0; i < products.length; i++) {
            for (int j = 0; j < products.length; j++) {
                products[i][j] = moments.cross(i, j) + weight * moments.mean(i) * moments.mean(j);
            }
        }
        return products;
    }

    /** Solves scaled normal equations; the last row and column of the products are the response's. */
    private static final class Solution {
        final double[] coefficients;
        final double rest;
        private final DMatrixRMaj inverse;
        private final double[] scale;

        Solution(double[][] products, int columns) {
            scale = new double[columns];
            for (int i = 0; i < columns; i++) {
                scale[i] = 1 / Math.sqrt(products[i][i]);
            }
            DMatrixRMaj scaled = new DMatrixRMaj(columns, columns);
            DMatrixRMaj right = new DMatrixRMaj(columns, 1);
            for (int i = 0; i < columns; i++) {
                right.set(i, 0, products[i][columns] * scale[i]);
                for (int j = 0; j < columns; j++) {
                    scaled.set(i, j, products[i][j] * scale[i] * scale[j]);
                }
            }
            LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.chol(columns);
            if (!solver.setA(scaled)) {
                throw new IllegalArgumentException("a column is determined by the others: leave it out");
            }
            DMatrixRMaj solution = new DMatrixRMaj(columns, 1);
            solver.solve(right, solution);
            inverse = new DMatrixRMaj(columns, columns);
            solver.invert(inverse);
            coefficients = new double[columns];
            double explained = 0;
            for (int i = 0; i < columns; i++) {
                coefficients[i] = solution.get(i, 0) * scale[i];
                explained += solution.get(i, 0) * right.get(i, 0);
            }
            rest = Math.max(0, products[columns][columns] - explained);
        }

        double inverse(int i, int j) {
            return inverse.get(i, j) * scale[i] * scale[j];
        }
    }
}
