package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FahrenheitTest {

    /** NIST SP 811 appendix B: 80 °F = 26.6667 °C, 65 °F = 18.3333 °C, −40 °F = −40 °C; freezing and boiling by definition. */
    @ParameterizedTest
    @CsvSource({"80, 26.6667", "65, 18.3333", "-40, -40", "32, 0", "212, 100"})
    void convertsBothWays(double tempF, double tempC) {
        assertThat(Fahrenheit.toCelsius(tempF)).isCloseTo(tempC, within(5e-5));
        assertThat(Fahrenheit.fromCelsius(tempC)).isCloseTo(tempF, within(1e-4));
    }

    /** NIST SP 811 appendix B: a difference of 15 °F is 8.3333 K. */
    @Test
    void aStepHasNoOffset() {
        assertThat(Fahrenheit.stepToKelvin(15)).isCloseTo(8.3333, within(5e-5));
    }

    @Test
    void nothingIsColderThanAbsoluteZero() {
        assertThat(Fahrenheit.toCelsius(-459.67)).isCloseTo(-273.15, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Fahrenheit.toCelsius(-460))
                .withMessageContaining("-459.67");
        assertThatIllegalArgumentException().isThrownBy(() -> Fahrenheit.fromCelsius(-274));
        assertThatIllegalArgumentException().isThrownBy(() -> Fahrenheit.toCelsius(Double.NaN));
    }
}
