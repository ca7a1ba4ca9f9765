package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;

/**
 * Degrees of freedom of a contrast's variance: {@code df = 2 (l'Cl)² / (g'Ag)}, {@code gᵢ = l' (∂C/∂vᵢ) l}.
 *
 * <p>{@code C = s² P[x,x]⁻¹}; v are the scaled Cholesky parameters and η of {@code s = ŝ e^η}; {@code A = 2 H⁺} with H the
 * observed Hessian of −2 log L in v. Derivatives are central differences of the exact gradient and of C at two widths,
 * extrapolated; those by η are exact. A variance component at zero has no derivative and counts as known.
 *
 * @source Satterthwaite1946
 * @source Giesbrecht1985
 * @source Kuznetsova2017
 */
final class Satterthwaite {

    private static final double SHARE = 1e-8;

    private final int size;
    private final int fixed;
    private final int depth;
    private final NestedParameters parameters;
    private final double[] factor;
    private final double sigma2;
    private final double residualDf;
    private final double[] inverse;
    private final double[][] inverseSlopes;
    private final SymmetricEigen curvature;

    /**
     * Differentiates around an optimum.
     *
     * @param criterion whose workspace is overwritten
     * @param phi optimum
     */
    Satterthwaite(NestedCriterion criterion, double[] phi) {
        double[] gradient = new double[phi.length];
        criterion.evaluate(phi, gradient);
        size = phi.length;
        fixed = criterion.data.width - 1;
        depth = criterion.reduction.random.length;
        parameters = criterion.parameters;
        factor = criterion.reduction.factor.clone();
        sigma2 = criterion.sigma2;
        residualDf = criterion.nu;
        inverse = criterion.top.inverse.clone();
        inverseSlopes = new double[size][];
        double[][] hessian = new double[size + 1][size + 1];
        for (int i = 0; i < size; i++) {
            double[] slope = differentiate(criterion, phi, i);
            System.arraycopy(slope, 0, hessian[i], 0, size + 1);
            inverseSlopes[i] = Arrays.copyOfRange(slope, size + 1, slope.length);
        }
        for (int i = 0; i < size; i++) {
            hessian[size][i] = hessian[i][size];
            for (int j = 0; j < i; j++) {
                hessian[i][j] = (hessian[i][j] + hessian[j][i]) / 2;
                hessian[j][i] = hessian[i][j];
            }
        }
        hessian[size][size] = 4 * residualDf;
        curvature = SymmetricEigen.of(hessian);
    }

    private double[] differentiate(NestedCriterion criterion, double[] phi, int i) {
        double width = 1e-3 * Math.max(0.1, Math.abs(phi[i]));
        double[] wide = centralDifference(criterion, phi, i, width);
        double[] narrow = centralDifference(criterion, phi, i, width / 2);
        for (int k = 0; k < wide.length; k++) {
            narrow[k] = (4 * narrow[k] - wide[k]) / 3;
        }
        return narrow;
    }

    private double[] centralDifference(NestedCriterion criterion, double[] phi, int i, double width) {
        double[] above = at(criterion, phi, i, width);
        double[] below = at(criterion, phi, i, -width);
        for (int k = 0; k < above.length; k++) {
            above[k] = (above[k] - below[k]) / (2 * width);
        }
        return above;
    }

    /** Gradient by (φ, η), then P[x,x]⁻¹. */
    private double[] at(NestedCriterion criterion, double[] phi, int i, double width) {
        double[] there = phi.clone();
        there[i] += width;
        double[] gradient = new double[size + 1];
        criterion.evaluate(there, sigma2, gradient);
        double[] both = Arrays.copyOf(gradient, size + 1 + inverse.length);
        System.arraycopy(criterion.top.inverse, 0, both, size + 1, inverse.length);
        return both;
    }

    /**
     * Degrees of freedom of {@code l'b}.
     *
     * @param contrast l, length p
     * @return positive; the residual's when no uncertainty of a variance reaches the contrast
     */
    double df(double[] contrast) {
        return df(contrast, new double[depth]);
    }

    /**
     * Degrees of freedom of the variance {@code l'Cl + z'Σz}, of l'b and a room's own departure z'u.
     *
     * @param contrast l, length p
     * @param room z, one entry for each random column
     */
    double df(double[] contrast, double[] room) {
        double[] slopes = Arrays.copyOf(parameters.spreadSlopes(room, factor), size + 1);
        double variance = form(inverse, contrast) + parameters.spread(room, factor);
        for (int i = 0; i < size; i++) {
            slopes[i] += form(inverseSlopes[i], contrast);
        }
        slopes[size] = 2 * variance;
        double uncertainty = 2 * curvature.inverseForm(slopes, SHARE);
        return uncertainty > 0 ? 2 * variance * variance / uncertainty : residualDf;
    }

    private double form(double[] matrix, double[] l) {
        double form = 0;
        for (int i = 0; i < fixed; i++) {
            for (int j = 0; j < fixed; j++) {
                form += l[i] * matrix[i * fixed + j] * l[j];
            }
        }
        return form;
    }
}
