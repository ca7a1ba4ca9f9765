package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;

/**
 * Degrees of freedom of a contrast's variance: {@code df = 2 (l'Cl)² / (g'Ag)}, {@code gᵢ = l' (∂C/∂vᵢ) l}.
 *
 * <p>{@code C = s² P[x,x]⁻¹}; v are the scaled Cholesky parameters and η of {@code s = ŝ e^η}; {@code A = 2 H⁺} with H the
 * observed Hessian of −2 log L in v. All derivatives are exact ({@link NestedCurvature}). A variance component at zero has no derivative and counts as known.
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
        criterion.moveTo(phi);
        size = phi.length;
        fixed = criterion.data.width - 1;
        depth = criterion.reduction.random.length;
        parameters = criterion.parameters;
        factor = criterion.reduction.factor.clone();
        residualDf = criterion.nu;
        inverse = criterion.top.inverse.clone();
        NestedCurvature bends = new NestedCurvature(criterion, phi);
        inverseSlopes = bends.inverse;
        double[][] hessian = new double[size + 1][size + 1];
        for (int i = 0; i < size; i++) {
            System.arraycopy(bends.hessian[i], 0, hessian[i], 0, size);
            hessian[i][size] = -2 * bends.residual[i] / criterion.sigma2;
            hessian[size][i] = hessian[i][size];
        }
        hessian[size][size] = 4 * residualDf;
        curvature = SymmetricEigen.of(hessian);
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
