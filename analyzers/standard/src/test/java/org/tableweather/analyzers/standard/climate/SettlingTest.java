package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures of the exponential response, recomputed outside this project at full precision. */
class SettlingTest {
    private final Settling settling = new Settling(4);

    @ParameterizedTest
    @CsvSource({
        "1, 0.6321205588285577",
        "2, 0.8646647167633873",
        "3, 0.950212931632136",
        "5, 0.9932620530009145",
        "0, 0"
    })
    void fractionDoneIsTheExponentials(double timeConstants, double fraction) {
        assertThat(settling.fractionAfter(4 * timeConstants)).isCloseTo(fraction, within(1e-15));
    }

    @ParameterizedTest
    @CsvSource({"0.90, 2.302585092994046", "0.95, 2.9957", "0.99, 4.6052", "0, 0"})
    void timeToAFractionIsTheLogarithms(double fraction, double timeConstants) {
        assertThat(settling.hoursToFraction(fraction)).isCloseTo(4 * timeConstants, within(4 * 5e-5));
    }

    /** A step of 20 %RH is within 0.5 %RH after ln(40) = 3.689 time constants. */
    @Test
    void timeToWithinATolerance() {
        assertThat(settling.hoursToWithin(20, 0.5)).isCloseTo(4 * 3.689, within(4 * 5e-4));
        assertThat(settling.hoursToWithin(-20, 0.5)).isEqualTo(settling.hoursToWithin(20, 0.5));
        assertThat(settling.hoursToWithin(0.4, 0.5)).isZero();
        assertThat(settling.hoursToWithin(0, 0.5)).isZero();
    }

    /** 1 %RH a minute with a time constant of 8 s lags 0.133 %RH. */
    @Test
    void lagBehindARamp() {
        assertThat(new Settling(8.0 / 3600).lagBehindRamp(60)).isCloseTo(0.133, within(0.0005));
    }

    @Test
    void valueGoesFromStartToTarget() {
        assertThat(settling.valueAfter(10, 16, 0)).isEqualTo(10);
        assertThat(settling.valueAfter(10, 16, 4)).isCloseTo(10 + 6 * 0.6321205588285577, within(1e-12));
        assertThat(settling.valueAfter(10, 16, 400)).isCloseTo(16, within(1e-12));
    }

    @Test
    void refusesWhatHasNoAnswer() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Settling(0))
                .withMessageContaining("timeConstantHours 0.0");
        assertThatIllegalArgumentException().isThrownBy(() -> new Settling(Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> settling.hoursToFraction(1))
                .withMessageContaining("never ends");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> settling.fractionAfter(-1))
                .withMessageContaining("hours -1.0");
        assertThatIllegalArgumentException().isThrownBy(() -> settling.hoursToWithin(20, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> settling.hoursToWithin(Double.NaN, 1));
    }
}
