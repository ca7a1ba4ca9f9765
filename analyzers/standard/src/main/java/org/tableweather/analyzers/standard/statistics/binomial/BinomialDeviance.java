package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.Arrays;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;

/** Minus twice the log likelihood without constants, as a function of β (of scaled columns) and σ; even in σ. */
final class BinomialDeviance implements SaddleFreeNewton.Objective {

    private static final double STEP = 1e-3;

    private final BinomialData data;
    private final HermiteNodes nodes;

    BinomialDeviance(BinomialData data, HermiteNodes nodes) {
        this.data = data;
        this.nodes = nodes;
    }

    double[] start(LogisticRegression naive, double sigma) {
        double[] start = Arrays.copyOf(naive.coefficients(), data.coefficients() + 1);
        start[data.coefficients()] = sigma;
        return start;
    }

    @Override
    public double evaluate(double[] at, double[] gradient) {
        Arrays.fill(gradient, 0);
        double sum = 0;
        for (ClusterCells cells : data.clusters()) {
            sum += new ClusterIntegral(cells, nodes, at).value(gradient);
        }
        for (int k = 0; k < gradient.length; k++) {
            gradient[k] *= -2;
        }
        return -2 * sum;
    }

    ClusterIntegral integral(ClusterCells cells, double[] at) {
        return new ClusterIntegral(cells, nodes, at);
    }

    /**
     * Covariance of the leading estimates, {@code 2 H⁻¹}: central differences of the gradient at two widths, Richardson's
     * extrapolation between them.
     *
     * @param size how many parameters are free: without σ when it is on its bound
     */
    double[][] covariance(double[] at, int size) {
        double[][] hessian = new double[size][size];
        for (int i = 0; i < size; i++) {
            double width = STEP * Math.max(0.1, Math.abs(at[i]));
            double[] wide = difference(at, i, width);
            double[] narrow = difference(at, i, width / 2);
            for (int j = 0; j < size; j++) {
                double entry = (4 * narrow[j] - wide[j]) / 3 / 4;
                hessian[i][j] += entry;
                hessian[j][i] += entry;
            }
        }
        return PositiveDefinite.of(hessian, Double.MIN_NORMAL)
                .orElseThrow(() -> new ArithmeticException("the likelihood has no curvature at its top"))
                .inverse();
    }

    private double[] difference(double[] at, int i, double width) {
        double[] up = new double[at.length];
        double[] down = new double[at.length];
        double[] there = at.clone();
        there[i] = at[i] + width;
        evaluate(there, up);
        there[i] = at[i] - width;
        evaluate(there, down);
        for (int j = 0; j < up.length; j++) {
            up[j] = (up[j] - down[j]) / (2 * width);
        }
        return up;
    }
}
