package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/** A fitted binomial mixed model. */
public final class BinomialFit {

    private static final double BOUND = 1e-4;

    private final BinomialMixedModel options;
    private final BinomialData data;
    private final BinomialDeviance deviance;
    private final LogisticRegression naive;
    private final double[] at;
    private final double kernel;
    private final double[][] covariance;

    BinomialFit(
            BinomialMixedModel options,
            BinomialData data,
            BinomialDeviance deviance,
            LogisticRegression naive,
            double[] at) {
        this.options = options;
        this.data = data;
        this.deviance = deviance;
        this.naive = naive;
        this.at = at.clone();
        int last = at.length - 1;
        double sigma = Math.abs(at[last]);
        this.at[last] = sigma < BOUND ? 0 : sigma;
        this.kernel = -deviance.evaluate(this.at, new double[at.length]) / 2;
        this.covariance = deviance.covariance(this.at, sigma < BOUND ? last : last + 1);
    }

    /** Number of rooms. */
    public int clusters() {
        return data.clusters().size();
    }

    /** Number of attempts. */
    public long attempts() {
        return data.attempts();
    }

    /** Number of coefficients, the intercept included. */
    public int coefficients() {
        return data.coefficients();
    }

    /** σ, standard deviation of rooms' log odds; 0 when rooms differ no more than luck makes them. */
    public double clusterSd() {
        return at[at.length - 1];
    }

    /** Of σ, by the observed information; empty when σ is 0. */
    public OptionalDouble clusterSdStandardError() {
        int last = at.length - 1;
        return covariance.length > last ? OptionalDouble.of(Math.sqrt(covariance[last][last])) : OptionalDouble.empty();
    }

    /** With the binomial constants, by this number of quadrature points. */
    public double logLikelihood() {
        return data.constant() + kernel;
    }

    /** {@code −2 (log likelihood − that of every cell at its own proportion)}. */
    public double deviance() {
        return 2 * (data.saturated() - logLikelihood());
    }

    /** {@code −2 log likelihood + 2 (coefficients + 1)}. */
    public double akaike() {
        return -2 * logLikelihood() + 2.0 * at.length;
    }

    /** Log likelihood without room effects, with the binomial constants. */
    public double naiveLogLikelihood() {
        return data.constant() + naive.logLikelihood();
    }

    /**
     * One coefficient.
     *
     * @param index 0 for the intercept, then the columns in their order
     */
    public BinomialEffect coefficient(int index) {
        return contrast(unit(index));
    }

    /** One coefficient as if attempts were independent of their room: for contrast only. */
    public BinomialEffect naiveCoefficient(int index) {
        double[] weights = data.scaling().weights(unit(index));
        double[][] inverse = naive.information().inverse();
        return effect(dot(weights, naive.coefficients()), quadratic(weights, inverse));
    }

    /**
     * A mixture {@code w'β}, for example the log odds at given columns.
     *
     * @param weights one per coefficient, the intercept first
     */
    public BinomialEffect contrast(double... weights) {
        if (weights.length != coefficients()) {
            throw new IllegalArgumentException("contrast needs " + coefficients() + " weights, got " + weights.length);
        }
        double[] scaled = data.scaling().weights(weights);
        return effect(dot(scaled, at), quadratic(scaled, covariance));
    }

    /** Each room's departure, in the order of first appearance. */
    public List<ClusterMode> modes() {
        return data.clusters().stream().map(this::mode).toList();
    }

    private ClusterMode mode(ClusterCells cells) {
        ClusterIntegral integral = deviance.integral(cells, at);
        return new ClusterMode(
                cells.label,
                clusterSd() * integral.mode(),
                clusterSd() / Math.sqrt(integral.curvature()),
                (long) Arrays.stream(cells.made).sum(),
                (long) Arrays.stream(cells.attempts).sum());
    }

    private double[] unit(int index) {
        double[] unit = new double[coefficients()];
        unit[index] = 1;
        return unit;
    }

    private BinomialEffect effect(double value, double variance) {
        double error = Math.sqrt(variance);
        double df = Double.POSITIVE_INFINITY;
        return new BinomialEffect(
                value,
                error,
                value / error,
                Coverage.twoSided(value / error, df),
                Interval.around(value, options.coverage().halfWidth(df) * error));
    }

    private static double dot(double[] weights, double[] values) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            sum += weights[k] * values[k];
        }
        return sum;
    }

    private static double quadratic(double[] weights, double[][] matrix) {
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            for (int l = 0; l < weights.length; l++) {
                sum += weights[k] * matrix[k][l] * weights[l];
            }
        }
        return sum;
    }
}
