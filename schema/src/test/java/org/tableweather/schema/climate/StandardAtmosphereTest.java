package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandardAtmosphereTest {
    /** The gas constant of dry air in ISO 2533 and in the US standard differ in the seventh digit. */
    private static final double BETWEEN_THE_STANDARDS_PA = 0.025;

    @Test
    void givesTheUsStandardsPressureAtOneKilometre() {
        GoldenTable.Row fact = GoldenTable.fact("ussa.1000");
        assertThat(StandardAtmosphere.pressurePa(1000)).isCloseTo(fact.value(), within(fact.tolerance()));
    }

    @Test
    void givesTheTabulatedPressuresForBothReadingsOfAltitude() {
        for (GoldenTable.Row row : GoldenTable.rows("standard_atmosphere")) {
            double altitude = row.number("altitude_m");
            assertThat(StandardAtmosphere.pressurePaAtGeopotential(altitude))
                    .isCloseTo(row.number("geopotential_pa"), within(BETWEEN_THE_STANDARDS_PA));
            assertThat(StandardAtmosphere.pressurePa(altitude))
                    .isCloseTo(row.number("geometric_pa"), within(BETWEEN_THE_STANDARDS_PA));
        }
    }

    @ParameterizedTest
    @CsvSource({"500", "1000", "4000"})
    void agreesWithTheHandbooksTable(double altitudeM) {
        GoldenTable.Row fact = GoldenTable.fact("ashrae.t1." + (int) altitudeM);
        assertThat(StandardAtmosphere.pressurePaAtGeopotential(altitudeM))
                .isCloseTo(fact.value(), within(fact.tolerance()));
    }

    /** 'psy.isa.mile': dew point does not change with altitude, the mixing ratio of 22 °C, 50 % rises by 21.8 % at one mile. */
    @Test
    void altitudeChangesTheMixingRatioAndNotTheDewPoint() {
        MoistAir sea = MoistAir.of(22, 50);
        MoistAir mile = MoistAir.of(22, 50, StandardAtmosphere.pressurePaAtGeopotential(1609.344));
        assertThat(mile.dewPointC()).isEqualTo(sea.dewPointC());
        assertThat(mile.humidityRatio() / sea.humidityRatio() - 1).isCloseTo(0.218, within(0.0005));
    }

    @ParameterizedTest
    @CsvSource({"-5001, is below -5000 m", "11001, is above 11000 m", "NaN, is no number"})
    void givesAnErrorOutsideTheLayer(double altitudeM, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StandardAtmosphere.pressurePa(altitudeM))
                .withMessageContaining(message);
    }
}
