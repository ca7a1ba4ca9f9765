package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;

/**
 * Logistic regression without room effects, by Newton's steps (iteratively reweighted least squares): the start of the
 * mixed model, and the naive answer beside it.
 *
 * @param coefficients of the scaled columns
 * @param information observed, {@code X'diag(nμ(1−μ))X}
 * @param logLikelihood without constants
 * @source McCullagh1989
 */
record LogisticRegression(double[] coefficients, PositiveDefinite information, double logLikelihood) {

    private static final int MOST_STEPS = 30;
    private static final double LEAST_SHARE = 1e-9;
    private static final double SETTLED = 1e-10;

    /** Empty when a column parts made from missed: then some coefficient grows without end. */
    static Optional<LogisticRegression> fit(List<ClusterCells> clusters) {
        int size = clusters.get(0).x[0].length;
        double[] beta = new double[size];
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] score = new double[size];
            double[][] information = new double[size][size];
            double height = 0;
            for (ClusterCells cells : clusters) {
                height += accumulate(cells, beta, score, information);
            }
            Optional<PositiveDefinite> factor = PositiveDefinite.of(information, LEAST_SHARE);
            if (factor.isEmpty()) {
                return Optional.empty();
            }
            double[] move = factor.get().solve(score);
            double largest = 0;
            for (int k = 0; k < size; k++) {
                beta[k] += move[k];
                largest = Math.max(largest, Math.abs(move[k]));
            }
            if (largest < SETTLED) {
                return Optional.of(new LogisticRegression(beta, factor.get(), height));
            }
        }
        return Optional.empty();
    }

    /** Whether no column is a mixture of the others. */
    static boolean identified(List<ClusterCells> clusters) {
        int size = clusters.get(0).x[0].length;
        double[][] gram = new double[size][size];
        for (ClusterCells cells : clusters) {
            accumulate(cells, new double[size], new double[size], gram);
        }
        return PositiveDefinite.of(gram, LEAST_SHARE).isPresent();
    }

    private static double accumulate(ClusterCells cells, double[] beta, double[] score, double[][] information) {
        double height = 0;
        for (int i = 0; i < cells.rows(); i++) {
            double eta = cells.linear(i, beta);
            double p = ClusterCells.logistic(eta);
            double weight = cells.attempts[i] * p * (1 - p);
            height += cells.made[i] * eta - cells.attempts[i] * ClusterCells.softplus(eta);
            for (int k = 0; k < beta.length; k++) {
                score[k] += (cells.made[i] - cells.attempts[i] * p) * cells.x[i][k];
                for (int l = 0; l < beta.length; l++) {
                    information[k][l] += weight * cells.x[i][k] * cells.x[i][l];
                }
            }
        }
        return height;
    }
}
