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
}
