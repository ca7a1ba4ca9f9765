package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SaturationCurveTest {

    @Test
    void everyFormulaGivesItsPublishedValuesFrom0To40() {
        PublishedCurves.BY_COLUMN.forEach((column, curve) -> {
            for (GoldenTable.Row row : GoldenTable.rows("saturation_pressure")) {
                assertThat(curve.applyAsDouble(row.number("temp_c")))
                        .as(column + " " + row)
                        .isCloseTo(row.number(column), within(row.halfDigit(column)));
            }
        });
    }

    /** Largest departures over whole degrees from 0 to 40 °C, from the facts beside saturation_pressure.csv. */
    @ParameterizedTest
    @CsvSource({
        "hyland_wexler, 0.022348558",
        "sonntag, 0.0025798210",
        "buck1981, 0.088016091",
        "buck1996, 0.042247345",
        "alduchov_eskridge, 0.25517030",
        "wmo8, 0.31263309"
    })
    void departsFromWagnerPrussByWhatIsKnown(String column, double knownPercent) {
        DoubleUnaryOperator curve = PublishedCurves.BY_COLUMN.get(column);
        double largest = 0;
        for (int t = 0; t <= 40; t++) {
            double ratio = curve.applyAsDouble(t) / SaturationCurve.WAGNER_PRUSS.pressurePa(t);
            largest = Math.max(largest, 100 * Math.abs(ratio - 1));
        }
        assertThat(largest).isCloseTo(knownPercent, within(1e-8));
    }

    @Test
    void agreesWithTheSecondSetAndTheIndustrialFormulation() {
        for (GoldenTable.Row row : GoldenTable.rows("saturation_pressure_second_set")) {
            double t = row.number("temp_c");
            double ours = SaturationCurve.HYLAND_WEXLER.pressurePa(t);
            assertThat(ours).isCloseTo(row.number("hyland_wexler"), within(row.halfDigit("hyland_wexler")));
            assertThat(SaturationCurve.WAGNER_PRUSS.pressurePa(t))
                    .isCloseTo(row.number("wagner_pruss"), within(row.halfDigit("wagner_pruss")));
            assertThat(ours).isCloseTo(row.number("if97"), withinPercentage(0.03));
            if (row.has("iapws95")) {
                assertThat(ours).isCloseTo(row.number("iapws95"), withinPercentage(0.03));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"wp.triple, 273.16", "wp.boiling, 373.1243", "wp.critical, 647.096"})
    void wagnerPrussMeetsItsThreeFixedPoints(String key, double kelvin) {
        GoldenTable.Row fact = GoldenTable.fact(key);
        assertThat(SaturationCurve.WAGNER_PRUSS.pressurePa(kelvin - 273.15))
                .isCloseTo(fact.value(), within(fact.tolerance()));
    }

    @ParameterizedTest
    @CsvSource({"ashrae.t3.5, 5", "ashrae.t3.25, 25", "ashrae.t3.50, 50"})
    void hylandWexlerAgreesWithTheHandbooksTable(String key, double tempC) {
        GoldenTable.Row fact = GoldenTable.fact(key);
        assertThat(SaturationCurve.HYLAND_WEXLER.pressurePa(tempC))
                .isCloseTo(fact.value(), within(fact.tolerance() * fact.value()));
    }

    /** Sonntag's formula is published for water down to −100 °C; Hyland's and Wexler's fit ends at 0 °C. */
    @Test
    void staysNearSonntagOverSupercooledWater() {
        for (int t = -40; t <= 0; t++) {
            assertThat(SaturationCurve.HYLAND_WEXLER.pressurePa(t))
                    .isCloseTo(PublishedCurves.SONNTAG.applyAsDouble(t), withinPercentage(0.1));
        }
    }

    @ParameterizedTest
    @EnumSource
    void isInvertedToTheLastBits(SaturationCurve curve) {
        double end = Math.min(curve.range().max(), 370);
        for (double t = curve.range().min(); t <= end; t += 0.37) {
            assertThat(curve.temperatureC(curve.pressurePa(t))).isCloseTo(t, within(2e-12 * (t + 273.15)));
        }
    }

    @ParameterizedTest
    @EnumSource
    void hasTheSlopeOfItsPressures(SaturationCurve curve) {
        double h = 1e-3;
        for (double t = curve.range().min() + 1; t < 100; t += 7) {
            double difference = (curve.pressurePa(t + h) - curve.pressurePa(t - h)) / (2 * h);
            assertThat(curve.slopePaPerK(t)).isCloseTo(difference, withinPercentage(1e-5));
        }
    }

    /** 'psy.sens.T' of the facts: d ln(eₛ)/dT at 20 °C, recomputed outside. */
    @Test
    void risesBySixPercentPerKelvinAtRoomTemperature() {
        SaturationCurve curve = SaturationCurve.HYLAND_WEXLER;
        assertThat(curve.slopePaPerK(20) / curve.pressurePa(20)).isCloseTo(0.06194422271761565, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "HYLAND_WEXLER, -40.1, tempC -40.1 °C is below -40 °C",
        "HYLAND_WEXLER, 200.5, tempC 200.5 °C is above 200 °C",
        "WAGNER_PRUSS, -0.5, tempC -0.5 °C is below 0 °C",
        "WAGNER_PRUSS, NaN, tempC NaN °C is no number"
    })
    void givesAnErrorOutsideItsRange(SaturationCurve curve, double tempC, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> curve.pressurePa(tempC))
                .withMessageStartingWith(message);
        assertThatIllegalArgumentException().isThrownBy(() -> curve.slopePaPerK(tempC));
    }

    @ParameterizedTest
    @CsvSource({"0", "-3", "NaN", "1e-3", "1e9", "Infinity"})
    void hasNoTemperatureForPressuresOfNoLiquid(double pressurePa) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SaturationCurve.HYLAND_WEXLER.temperatureC(pressurePa))
                .withMessageContaining("vapourPressurePa");
    }
}
