package org.tableweather.analyzers.standard.statistics.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

class PlacesTest {

    private static final double EXACT = 1e-10;

    private static double[] alike(int count, double value) {
        double[] values = new double[count];
        Arrays.fill(values, value);
        return values;
    }

    /** Φ(1) = 0.8413447460685429, from any table: the difference of both has mean 1 and variance 1. */
    @Test
    void ofTwoIsTheChanceOfTheirDifference() {
        double[] means = {1, 0};
        double[] variances = {0.3, 0.7};
        Places first = Places.of(0, means, variances).orThrow();
        Places second = Places.of(1, means, variances).orThrow();
        assertThat(first.chance().get(0)).isCloseTo(0.8413447460685429, within(EXACT));
        assertThat(second.chance().get(1)).isCloseTo(0.8413447460685429, within(EXACT));
        assertThat(first.expected()).isCloseTo(2 - 0.8413447460685429, within(EXACT));
    }

    /** By symmetry each place has the same chance. */
    @Test
    void ofAlikeValuesIsAnyOfThem() {
        for (int count : new int[] {3, 40, 301}) {
            Places places = Places.of(1, alike(count, 7), alike(count, 0.2)).orThrow();
            assertThat(places.chance()).allSatisfy(chance -> assertThat(chance).isCloseTo(1.0 / count, within(1e-8)));
            assertThat(places.expected()).isCloseTo((count + 1) / 2.0, within(1e-6));
        }
        // 2.5 % of 40 places at each end is one place, not more than it
        Places forty = Places.of(0, alike(40, 0), alike(40, 1)).orThrow();
        assertThat(forty.best(new Coverage(0.94))).isEqualTo(2);
        assertThat(forty.worst(new Coverage(0.94))).isEqualTo(39);
    }

    /** Values far apart keep their order. */
    @Test
    void ofValuesFarApartIsSure() {
        double[] means = {0, 100, -100, 200};
        for (int which = 0; which < 4; which++) {
            Places places = Places.of(which, means, alike(4, 1)).orThrow();
            int place = new int[] {3, 2, 4, 1}[which];
            assertThat(places.best(Coverage.DEFAULT)).isEqualTo(place);
            assertThat(places.worst(Coverage.DEFAULT)).isEqualTo(place);
        }
    }

    @Test
    void withoutVarianceThereIsNone() {
        Cause cause = Places.of(0, alike(3, 0), new double[] {1, 0, 1}).fold(value -> null, Refusal::cause);
        assertThat(cause).isEqualTo(Cause.NO_VARIATION);
    }

    /** By symmetry 5 % of 1,001 alike values lie 25 places from either end; beyond 1,000 the steps are coarse. */
    @Test
    void ofVeryManyKeepsItsIntervals() {
        Places places = Places.of(0, alike(1001, 0), alike(1001, 1)).orThrow();
        assertThat((double) places.best(Coverage.DEFAULT)).isCloseTo(26, within(6.0));
        assertThat((double) places.worst(Coverage.DEFAULT)).isCloseTo(976, within(6.0));
    }
}
