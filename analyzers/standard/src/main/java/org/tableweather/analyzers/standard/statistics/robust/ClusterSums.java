package org.tableweather.analyzers.standard.statistics.robust;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Cross-products of every cluster about the means of all rows, with the least-squares fit. A column of ones comes first.
 */
final class ClusterSums {

    private static final double LEAST_SHARE = 1e-9;
    private static final double EXACT = 1e-12;

    private final List<Cluster> clusters;
    private final Moments total;
    private final List<double[][]> grams = new ArrayList<>();
    private final List<double[]> scores = new ArrayList<>();
    private final PositiveDefinite factor;
    private final double[] slopes;
    private final double residual;

    private ClusterSums(List<Cluster> clusters, Moments total, PositiveDefinite factor) {
        this.clusters = clusters;
        this.total = total;
        this.factor = factor;
        int y = total.columns() - 1;
        double[] moments = new double[y + 1];
        for (int i = 0; i < y; i++) {
            moments[i + 1] = total.cross(i, y);
        }
        slopes = factor.solve(moments);
        double explained = 0;
        for (int i = 0; i <= y; i++) {
            explained += slopes[i] * moments[i];
        }
        residual = total.cross(y, y) - explained;
        for (Cluster cluster : clusters) {
            Moments centred = cluster.moments().minus(total.mean());
            double[][] gram = gram(centred);
            grams.add(gram);
            scores.add(score(centred, gram));
        }
    }

    static Answer<ClusterSums> of(List<Cluster> clusters) {
        Moments total = Moments.merged(clusters.stream().map(Cluster::moments).toList());
        Optional<PositiveDefinite> factor = PositiveDefinite.of(gram(total.minus(total.mean())), LEAST_SHARE);
        if (factor.isEmpty()) {
            return Answer.refuse(Cause.COLLINEAR, "columns determine each other, or one never changes");
        }
        ClusterSums sums = new ClusterSums(clusters, total, factor.get());
        int y = total.columns() - 1;
        if (sums.residual <= EXACT * total.cross(y, y)) {
            return Answer.refuse(Cause.NO_VARIATION, "the columns explain y to rounding: no scatter to judge by");
        }
        return Answer.of(sums);
    }

    /** X'X of the ones and the columns but the last. */
    private static double[][] gram(Moments moments) {
        int size = moments.columns();
        double n = moments.n();
        double[][] gram = new double[size][size];
        gram[0][0] = n;
        for (int i = 1; i < size; i++) {
            gram[i][0] = n * moments.mean(i - 1);
            gram[0][i] = gram[i][0];
            for (int j = 1; j < size; j++) {
                gram[i][j] = moments.cross(i - 1, j - 1) + n * moments.mean(i - 1) * moments.mean(j - 1);
            }
        }
        return gram;
    }

    /** X'e. */
    private double[] score(Moments centred, double[][] gram) {
        int y = centred.columns() - 1;
        double n = centred.n();
        double[] score = new double[y + 1];
        score[0] = n * centred.mean(y);
        for (int i = 0; i < y; i++) {
            score[i + 1] = centred.cross(i, y) + n * centred.mean(i) * centred.mean(y);
        }
        for (int i = 0; i <= y; i++) {
            for (int j = 0; j <= y; j++) {
                score[i] -= gram[i][j] * slopes[j];
            }
        }
        return score;
    }

    int clusters() {
        return clusters.size();
    }

    long rows() {
        return total.n();
    }

    int coefficients() {
        return total.columns();
    }

    double residualVariance() {
        return residual / (rows() - coefficients());
    }

    String label(int cluster) {
        return clusters.get(cluster).label();
    }

    /** {@code L⁻¹Xⱼ'XⱼL⁻ᵀ}. */
    double[][] whitenedGram(int cluster) {
        return factor.whiten(grams.get(cluster));
    }

    /** {@code L⁻¹Xⱼ'eⱼ}. */
    double[] whitenedScore(int cluster) {
        return factor.whiten(scores.get(cluster));
    }

    /** {@code L⁻¹ c}, with c the contrast of the centred coefficients: the intercept moves with the means. */
    double[] whiten(double[] weights) {
        double[] centred = weights.clone();
        for (int i = 1; i < centred.length; i++) {
            centred[i] -= weights[0] * total.mean(i - 1);
        }
        return factor.whiten(centred);
    }

    /** {@code w'β}. */
    double value(double[] weights) {
        double value = weights[0] * total.mean(coefficients() - 1);
        for (int i = 1; i < weights.length; i++) {
            value += (weights[i] - weights[0] * total.mean(i - 1)) * slopes[i];
        }
        return value;
    }
}
