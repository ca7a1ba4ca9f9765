package org.tableweather.analyzers.standard.statistics.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class PooledShapeTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("kind/guards.properties");

    private static KStatistics of(double... x) {
        double mean = 0;
        for (double each : x) {
            mean += each / x.length;
        }
        double[] sums = new double[3];
        for (double each : x) {
            double d = each - mean;
            sums[0] += d * d;
            sums[1] += d * d * d;
            sums[2] += d * d * d * d;
        }
        return new KStatistics(x.length, sums[0], sums[1], sums[2]);
    }

    @Test
    void meetsPublishedSoftware() {
        KStatistics k = of(GOLDEN.numbers("x"));

        GoldenFile.assertNear(k.k2(), GOLDEN.number("k2"), 1e-12);
        GoldenFile.assertNear(k.k3(), GOLDEN.number("k3"), 1e-12);
        GoldenFile.assertNear(k.k4(), GOLDEN.number("k4"), 1e-11);
    }

    /** Groups of 8 with means of their own: both z have mean 0 and deviation 1 in 4,000 pools of normal scatter. */
    @Test
    void itsErrorsAreThoseOfNormalScatter() {
        Random random = new Random(11);
        int pools = 4000;
        double[] mean = new double[2];
        double[] square = new double[2];
        for (int pool = 0; pool < pools; pool++) {
            PooledShape shape = drawn(random);
            double[] z = {shape.skewnessZ(), shape.kurtosisZ()};
            for (int i = 0; i < 2; i++) {
                mean[i] += z[i] / pools;
                square[i] += z[i] * z[i] / pools;
            }
        }
        for (int i = 0; i < 2; i++) {
            assertThat(mean[i]).isCloseTo(0, within(0.08));
            assertThat(Math.sqrt(square[i])).isCloseTo(1, within(0.06));
        }
    }

    private static PooledShape drawn(Random random) {
        List<KStatistics> groups = new ArrayList<>();
        for (int group = 0; group < 30; group++) {
            double[] x = new double[8];
            for (int i = 0; i < x.length; i++) {
                x[i] = 10 * group + 2 * random.nextGaussian();
            }
            groups.add(of(x));
        }
        return PooledShape.of(groups).orThrow();
    }

    /** A uniform distribution has excess kurtosis −1.2, an exponential one skewness 2. */
    @Test
    void knowsOtherShapes() {
        Random random = new Random(12);
        List<KStatistics> uniform = new ArrayList<>();
        List<KStatistics> exponential = new ArrayList<>();
        for (int group = 0; group < 500; group++) {
            double[] x = new double[20];
            double[] y = new double[20];
            for (int i = 0; i < x.length; i++) {
                x[i] = random.nextDouble();
                y[i] = -Math.log(1 - random.nextDouble());
            }
            uniform.add(of(x));
            exponential.add(of(y));
        }
        assertThat(PooledShape.of(uniform).orThrow().excessKurtosis()).isCloseTo(-1.2, within(0.05));
        assertThat(PooledShape.of(exponential).orThrow().skewness()).isCloseTo(2, within(0.15));
    }

    @Test
    void refusesWhatHasNoShape() {
        assertThat(PooledShape.of(List.of()).<Cause>fold(shape -> Cause.COLLINEAR, Refusal::cause))
                .isEqualTo(Cause.TOO_FEW);
        assertThat(PooledShape.of(List.of(of(3, 3, 3, 3))).<Cause>fold(shape -> Cause.COLLINEAR, Refusal::cause))
                .isEqualTo(Cause.NO_VARIATION);
        assertThatThrownBy(() -> of(1, 2, 3)).hasMessageContaining("n >= 4");
    }
}
