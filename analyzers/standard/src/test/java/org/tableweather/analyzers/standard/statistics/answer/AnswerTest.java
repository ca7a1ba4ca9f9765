package org.tableweather.analyzers.standard.statistics.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

class AnswerTest {

    @Test
    void aRefusalPassesThroughWhatFollows() {
        Answer<Integer> refused = Answer.refuse(Cause.TOO_FEW, "1 room: 2 are needed");
        Answer<Integer> next = refused.then(value -> Answer.of(value + 1));
        assertThat(next).isEqualTo(refused);
        assertThatThrownBy(next::orThrow).hasMessage("TOO_FEW: 1 room: 2 are needed");
        assertThat(Answer.of(1).then(value -> Answer.of(value + 1)).orThrow()).isEqualTo(2);
    }

    @Test
    void anIntervalIsInOrderAndHoldsItsEnds() {
        Interval interval = Interval.around(3, 2);
        assertThat(interval).isEqualTo(new Interval(1, 5));
        assertThat(interval.contains(5)).isTrue();
        assertThat(interval.contains(5.1)).isFalse();
        assertThat(interval.width()).isEqualTo(4);
        assertThatThrownBy(() -> new Interval(2, 1)).hasMessageContaining("lower <= upper");
        assertThatThrownBy(() -> new Interval(Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Quantiles and tails of R 4.2.2: qt(0.975, c(1, 19)), qnorm(0.975), 2 * pt(-2.5, 7), 2 * pnorm(-6). */
    @Test
    void coverageHasTheQuantilesOfPublishedSoftware() {
        assertThat(Coverage.DEFAULT.halfWidth(1)).isCloseTo(12.7062047361747, within(1e-11));
        assertThat(Coverage.DEFAULT.halfWidth(19)).isCloseTo(2.09302405440831, within(1e-12));
        assertThat(Coverage.DEFAULT.halfWidth(Double.POSITIVE_INFINITY)).isCloseTo(1.95996398454005, within(1e-13));
        assertThat(Coverage.twoSided(2.5, 7)).isCloseTo(0.0409922185857529, within(1e-14));
        assertThat(Coverage.twoSided(-6, Double.POSITIVE_INFINITY)).isCloseTo(1.9731752900754e-09, within(1e-20));
        assertThatThrownBy(() -> new Coverage(1)).hasMessageContaining("(0, 1)");
    }
}
