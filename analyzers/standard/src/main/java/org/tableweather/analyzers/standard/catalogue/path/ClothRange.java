package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.PublishedRange;

/**
 * What is known of a cloth's coefficients. Where none was measured: a published range and a typical value, taken as a triangle of
 * probability with mean {@code (a + b + c)/3} and variance {@code (a² + b² + c² − ab − ac − bc)/18}. Rolling, where there are
 * roll-outs: a normal distribution about their mean, none below nought.
 *
 * @source AlciatorePhysics
 */
final class ClothRange {

    private static final PublishedRange[] RANGES = {
        PublishedRange.CLOTH_SLIDING, PublishedRange.CLOTH_ROLLING, PublishedRange.CLOTH_SPIN_DECAY_RADPS2
    };

    /** How many coefficients there are. */
    static final int COUNT = RANGES.length;

    private static final int ROLLING = 1;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private final Optional<RollingEstimate> rolling;

    /** Of a cloth whose rolling was measured or not. */
    ClothRange(Optional<RollingEstimate> rolling) {
        this.rolling = rolling;
    }

    private Optional<RollingEstimate> measured(int coefficient) {
        return coefficient == ROLLING ? rolling : Optional.empty();
    }

    /** The means. */
    double[] means() {
        double[] means = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            double published = (RANGES[i].low + RANGES[i].high + RANGES[i].typical) / 3;
            means[i] = measured(i).map(RollingEstimate::mean).orElse(published);
        }
        return means;
    }

    /** Standard deviation of one. */
    double deviation(int coefficient) {
        return measured(coefficient).map(RollingEstimate::deviation).orElseGet(() -> published(coefficient));
    }

    private static double published(int coefficient) {
        PublishedRange range = RANGES[coefficient];
        double a = range.low;
        double b = range.high;
        double c = range.typical;
        return Math.sqrt((a * a + b * b + c * c - a * b - a * c - b * c) / 18);
    }

    /** The value as far from the mean as a standard normal deviate is from nought. */
    double value(int coefficient, double deviate) {
        return measured(coefficient)
                .map(known -> Math.max(0, known.mean() + deviate * known.deviation()))
                .orElseGet(() -> quantile(coefficient, NORMAL.cumulativeProbability(deviate)));
    }

    /** The value below which a share of the probability lies. */
    private static double quantile(int coefficient, double share) {
        PublishedRange range = RANGES[coefficient];
        double width = range.high - range.low;
        double rising = range.typical - range.low;
        return share * width < rising
                ? range.low + Math.sqrt(share * width * rising)
                : range.high - Math.sqrt((1 - share) * width * (range.high - range.typical));
    }

    /** A cloth of these coefficients, none below nought. */
    static ClothFriction cloth(double[] coefficients) {
        return new ClothFriction(
                Math.max(0, coefficients[0]), Math.max(0, coefficients[1]), Math.max(0, coefficients[2]));
    }
}
