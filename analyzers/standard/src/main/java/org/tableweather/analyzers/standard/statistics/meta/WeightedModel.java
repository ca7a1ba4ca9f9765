package org.tableweather.analyzers.standard.statistics.meta;

import java.util.Arrays;
import java.util.List;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;

/**
 * {@code y ~ N(Xβ, diag(v + τ²))} for a given τ²: {@code W = diag(1/(v + τ²))}, {@code P = W − WX(X'WX)⁻¹X'W}.
 *
 * <p>y is centred by its plain mean while computing, which an intercept absorbs.
 */
final class WeightedModel {

    private static final double LEAST_SHARE = 1e-10;

    private final double[][] x;
    private final double[] y;
    private final double[] v;
    private final double centre;

    /** Columns of {@code x}: 1, then the moderators. */
    WeightedModel(List<StudyEffect> effects, double[][] moderators) {
        int k = effects.size();
        centre = effects.stream().mapToDouble(StudyEffect::estimate).sum() / k;
        x = new double[k][];
        y = new double[k];
        v = new double[k];
        for (int i = 0; i < k; i++) {
            x[i] = new double[1 + moderators[i].length];
            x[i][0] = 1;
            System.arraycopy(moderators[i], 0, x[i], 1, moderators[i].length);
            y[i] = effects.get(i).estimate() - centre;
            v[i] = effects.get(i).variance();
        }
    }

    int studies() {
        return y.length;
    }

    int columns() {
        return x[0].length;
    }

    int df() {
        return studies() - columns();
    }

    double largestVariance() {
        double largest = 0;
        for (double variance : v) {
            largest = Math.max(largest, variance);
        }
        return largest;
    }

    /** Whether no column is a mixture of the others. */
    boolean identified() {
        return PositiveDefinite.of(gram(evenWeights()), LEAST_SHARE).isPresent();
    }

    /** Ordinary least squares: every weight 1. */
    At unweighted() {
        return new At(evenWeights());
    }

    private double[] evenWeights() {
        double[] even = new double[y.length];
        Arrays.fill(even, 1);
        return even;
    }

    At at(double tauSquared) {
        double[] weights = new double[v.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = 1 / (v[i] + tauSquared);
        }
        return new At(weights);
    }

    private double[][] gram(double[] weights) {
        int p = columns();
        double[][] gram = new double[p][p];
        for (int i = 0; i < weights.length; i++) {
            for (int a = 0; a < p; a++) {
                for (int b = 0; b < p; b++) {
                    gram[a][b] += weights[i] * x[i][a] * x[i][b];
                }
            }
        }
        return gram;
    }

    /** The model at one τ². */
    final class At {

        final double[] weights;
        final PositiveDefinite factor;
        final double[] beta;
        /** y'Py. */
        final double q;
        /** y'PPy. */
        final double slopeOfQ;

        private At(double[] weights) {
            this.weights = weights;
            factor = PositiveDefinite.of(gram(weights), Double.MIN_NORMAL)
                    .orElseThrow(() -> new ArithmeticException("X'WX is singular: check identified() first"));
            beta = factor.solve(moments());
            double sum = 0;
            double squared = 0;
            for (int i = 0; i < weights.length; i++) {
                double weighted = weights[i] * residual(i);
                sum += weighted * residual(i);
                squared += weighted * weighted;
            }
            q = sum;
            slopeOfQ = squared;
        }

        private double[] moments() {
            double[] moments = new double[columns()];
            for (int i = 0; i < weights.length; i++) {
                for (int a = 0; a < moments.length; a++) {
                    moments[a] += weights[i] * x[i][a] * y[i];
                }
            }
            return moments;
        }

        private double residual(int i) {
            double fitted = 0;
            for (int a = 0; a < beta.length; a++) {
                fitted += x[i][a] * beta[a];
            }
            return y[i] - fitted;
        }

        /** Coefficients with the centre put back. */
        double coefficient(int column) {
            return column == 0 ? beta[0] + centre : beta[column];
        }

        double traceOfWeights() {
            double sum = 0;
            for (double weight : weights) {
                sum += weight;
            }
            return sum;
        }

        /** {@code tr P = Σw − tr((X'WX)⁻¹ X'W²X)}. */
        double traceOfP() {
            double[] squared = new double[weights.length];
            for (int i = 0; i < squared.length; i++) {
                squared[i] = weights[i] * weights[i];
            }
            double[][] inner = gram(squared);
            double[][] inverse = factor.inverse();
            double trace = traceOfWeights();
            for (int a = 0; a < inner.length; a++) {
                for (int b = 0; b < inner.length; b++) {
                    trace -= inverse[a][b] * inner[b][a];
                }
            }
            return trace;
        }

        private double sumOfLogVariances() {
            double sum = 0;
            for (double weight : weights) {
                sum -= StrictMath.log(weight);
            }
            return sum;
        }

        /** Slope of the log likelihood in τ², times 2. */
        double score() {
            return slopeOfQ - traceOfWeights();
        }

        /** Slope of the restricted log likelihood in τ², times 2. */
        double restrictedScore() {
            return slopeOfQ - traceOfP();
        }

        double logLikelihood() {
            return -0.5 * (studies() * StrictMath.log(2 * Math.PI) + sumOfLogVariances() + q);
        }

        double restrictedLogLikelihood() {
            return -0.5
                    * (df() * StrictMath.log(2 * Math.PI)
                            - unweighted().factor.logDeterminant()
                            + sumOfLogVariances()
                            + factor.logDeterminant()
                            + q);
        }
    }
}
