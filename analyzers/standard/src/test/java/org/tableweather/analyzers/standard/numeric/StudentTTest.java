package org.tableweather.analyzers.standard.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Closed forms of the quantile at p = (1 + coverage)/2. */
class StudentTTest {

    /** One degree of freedom is Cauchy: {@code tan(π (p − 1/2))}. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.9, 0.95, 0.99})
    void oneDegreeOfFreedomIsCauchy(double coverage) {
        double expected = Math.tan(Math.PI * coverage / 2);
        assertThat(StudentT.halfWidth(coverage, 1)).isEqualTo(expected, within(1e-12 * expected));
    }

    /** Two degrees of freedom: {@code (2p − 1) √(2 / (4p(1 − p)))}. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.9, 0.95, 0.99})
    void twoDegreesOfFreedomHaveARoot(double coverage) {
        double expected = coverage * Math.sqrt(2 / (1 - coverage * coverage));
        assertThat(StudentT.halfWidth(coverage, 2)).isEqualTo(expected, within(1e-13 * expected));
    }
}
