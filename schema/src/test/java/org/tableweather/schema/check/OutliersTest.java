package org.tableweather.schema.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OutliersTest {

    /** The reference is the middle of the sorted values. */
    @Test
    void findTheMedianWithoutSorting() {
        Random random = new Random(11);
        for (int round = 0; round < 5000; round++) {
            int size = 1 + random.nextInt(60);
            double[] values =
                    random.doubles(size).map(value -> Math.floor(value * 20)).toArray();
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double median = size % 2 == 1 ? sorted[size / 2] : (sorted[size / 2 - 1] + sorted[size / 2]) / 2;

            assertThat(Outliers.median(values, size)).isEqualTo(median);
        }
    }

    /** Against sorting: what is called tight has no value beyond the limit. */
    @Test
    void areRuledOutWithoutSortingOnlyWhereThereAreNone() {
        Random random = new Random(3);
        int tight = 0;
        for (int i = 0; i < 3000; i++) {
            double[] values = random.doubles(8 + random.nextInt(60)).toArray();
            for (int j = 0; j < values.length; j++) {
                values[j] = i % 3 == 0 ? Math.rint(values[j] * 9) : 40 + random.nextGaussian();
            }
            values[random.nextInt(values.length)] *= random.nextInt(4) == 0 ? 30 : 1;
            if (Series.of(values, values.length).isTight()) {
                tight++;
                assertThat(farthest(values)).isLessThanOrEqualTo(6 * mad(values) / 0.6745);
            }
        }
        assertThat(tight).isGreaterThan(100);
    }

    private static double farthest(double[] values) {
        double middle = sortedMedian(values);
        return Arrays.stream(values)
                .map(value -> Math.abs(value - middle))
                .max()
                .orElseThrow();
    }

    private static double mad(double[] values) {
        double middle = sortedMedian(values);
        return sortedMedian(
                Arrays.stream(values).map(value -> Math.abs(value - middle)).toArray());
    }

    private static double sortedMedian(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /** Correlations by hand: a straight line has 1, a line up and down has 0. */
    @Test
    void knowASeriesThatRuns() {
        double[] line = new double[12];
        double[] hill = new double[12];
        for (int i = 0; i < 12; i++) {
            line[i] = 40 - i / 10.0;
            hill[i] = 40 - Math.abs(i - 5.5);
        }
        assertThat(Series.of(line, 12).runs()).isTrue();
        assertThat(Series.of(line, 11).runs()).isFalse();
        assertThat(Series.of(hill, 12).runs()).isFalse();
    }
}
