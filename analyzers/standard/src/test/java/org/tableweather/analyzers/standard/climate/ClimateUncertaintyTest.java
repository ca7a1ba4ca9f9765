package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.uncertainty.Propagation;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.analyzers.standard.uncertainty.UncertaintyBudget;
import org.tableweather.schema.climate.Enhancement;
import org.tableweather.schema.climate.Fahrenheit;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.climate.SaturationCurve;
import org.tableweather.schema.climate.VapourFormula;

/** Sensitivities and uncertainties recomputed outside this project, with the digits kept there. */
class ClimateUncertaintyTest {
    private static final AirReading ROOM = reading(22, 0.3, 50, 2);

    @Test
    void dewPointAt22And50() {
        UncertaintyBudget budget = ClimateUncertainty.dewPointC(ROOM);
        assertThat(budget.value()).isCloseTo(11.1101, within(5e-5));
        assertThat(budget.lines().get(0).sensitivity()).isCloseTo(0.9185, within(5e-5));
        assertThat(budget.lines().get(1).sensitivity()).isCloseTo(0.3012, within(5e-5));
        assertThat(budget.standardUncertainty()).isCloseTo(0.6624, within(5e-5));
        assertThat(budget.coverageFactor(0.95)).isCloseTo(1.96, within(5e-4));
    }

    /** These were recomputed by finite differences, good to five digits. */
    @Test
    void dewPointAt20And50() {
        UncertaintyBudget budget = ClimateUncertainty.dewPointC(reading(20, 0.15, 50, 1));
        assertThat(budget.lines().get(1).sensitivity()).isCloseTo(0.2967933402777021, within(2e-5));
        assertThat(budget.lines().get(0).sensitivity()).isCloseTo(0.9192060848473034, within(2e-5));
        assertThat(budget.standardUncertainty()).isCloseTo(0.32725744136329854, within(2e-5));
    }

    @Test
    void absoluteHumidityAt22And50() {
        UncertaintyBudget budget = ClimateUncertainty.absoluteHumidityGPerM3(ROOM);
        assertThat(budget.value()).isCloseTo(9.7078, within(5e-5));
        assertThat(budget.lines().get(0).sensitivity()).isCloseTo(0.5593, within(5e-5));
        assertThat(budget.lines().get(1).sensitivity()).isCloseTo(0.19416, within(5e-6));
        assertThat(budget.standardUncertainty()).isCloseTo(0.4230, within(5e-4));
    }

    /** 'psy.warm.20to25': over a bed 5 K warmer 22 °C, 50 % is 37.07 %; RH falls 6.1 % of itself per K at 22 °C. */
    @Test
    void bedHumidityFollowsAllThreeReadings() {
        UncertaintyBudget budget = ClimateUncertainty.bedRhPct(ROOM, UncertainValue.of(27, 0.4));
        assertThat(budget.value()).isCloseTo(37.07, within(0.005));
        assertThat(budget.lines().get(0).sensitivity() / budget.value()).isCloseTo(0.0610, within(5e-5));
        assertThat(budget.lines().get(1).sensitivity()).isCloseTo(37.07 / 50, within(1e-4));
        assertThat(budget.lines().get(2).name()).isEqualTo("bedC");
        assertThat(budget.lines().get(2).sensitivity()).isNegative();
    }

    @Test
    void formulasAndDifferencesAgreeUnderAnyFormula() {
        VapourFormula enhanced = new VapourFormula(SaturationCurve.WAGNER_PRUSS, Enhancement.BUCK_1981);
        AirReading room = new AirReading(UncertainValue.of(24, 0.3), UncertainValue.of(60, 2), 90_000, -0.3, enhanced);
        UncertainValue bed = UncertainValue.of(21, 0.5);
        same(
                ClimateUncertainty.dewPointC(room),
                Propagation.of(x -> air(x, room).dewPointC(), room.inputs()));
        same(
                ClimateUncertainty.absoluteHumidityGPerM3(room),
                Propagation.of(x -> air(x, room).absoluteHumidityGPerM3(), room.inputs()));
        same(
                ClimateUncertainty.bedRhPct(room, bed),
                Propagation.of(x -> air(x, room).rhPctAt(x[2]), room.inputs().and("bedC", bed)));
        same(
                ClimateUncertainty.marginAboveDewPointK(room, bed),
                Propagation.of(
                        x -> x[2] - air(x, room).dewPointC(), room.inputs().and("bedC", bed)));
    }

    @Test
    void sharedErrorsMatter() {
        AirReading apart = ROOM;
        AirReading together = new AirReading(ROOM.tempC(), ROOM.rhPct(), ROOM.pressurePa(), -1, ROOM.formula());
        // u² = (c₁u₁ − c₂u₂)² with the sensitivities above.
        assertThat(ClimateUncertainty.dewPointC(together).standardUncertainty())
                .isCloseTo(Math.abs(0.9185 * 0.3 - 0.3012 * 2), within(2e-4));
        assertThat(ClimateUncertainty.dewPointC(apart).standardUncertainty()).isCloseTo(0.6624, within(5e-5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new AirReading(ROOM.tempC(), ROOM.rhPct(), 101_325, 2, ROOM.formula()))
                .withMessageContaining("correlation 2.0");
    }

    @Nested
    class Bed {
        @Test
        void heatedIsDry() {
            BedClimate bed = BedClimate.of(ROOM, UncertainValue.of(27, 0.3));
            assertThat(bed.rhPct().orElseThrow().value()).isCloseTo(37.07, within(0.005));
            assertThat(bed.marginK().value()).isCloseTo(27 - 11.1101, within(5e-5));
            assertThat(bed.condensation()).isEqualTo(BedClimate.Condensation.NONE);
        }

        /** 'cond.8080': a table at 65 °F in air of 80 °F, 80 % is 4.6 K below the dew point. */
        @Test
        void coldSweats() {
            AirReading damp = reading(Fahrenheit.toCelsius(80), 0.3, 80, 2);
            BedClimate bed = BedClimate.of(damp, UncertainValue.of(Fahrenheit.toCelsius(65), 0.3));
            assertThat(bed.rhPct()).isEmpty();
            assertThat(bed.marginK().value()).isCloseTo(-4.596, within(0.001));
            assertThat(bed.condensation()).isEqualTo(BedClimate.Condensation.PRESENT);
        }

        /** The dew point of 24 °C, 60 % is 15.763 °C; its uncertainty with these readings is about 0.65 K. */
        @Test
        void nearTheDewPointItMaySweat() {
            AirReading room = reading(24, 0.3, 60, 2);
            assertThat(BedClimate.of(room, UncertainValue.of(16.5, 0.3)).condensation())
                    .isEqualTo(BedClimate.Condensation.POSSIBLE);
            assertThat(BedClimate.of(room, UncertainValue.of(18, 0.3)).condensation())
                    .isEqualTo(BedClimate.Condensation.NONE);
        }

        @Test
        void correlatedReadingsOfFewObservationsGetTwoStandardUncertainties() {
            AirReading room = new AirReading(
                    new UncertainValue(24, 0.3, 4), new UncertainValue(60, 2, 4), 101_325, 0.5, VapourFormula.DEFAULT);
            BedClimate bed = BedClimate.of(room, UncertainValue.of(17.0, 0.3));
            assertThat(bed.marginK().degreesOfFreedom()).isEmpty();
            assertThat(bed.condensation()).isEqualTo(BedClimate.Condensation.POSSIBLE);
        }
    }

    private static MoistAir air(double[] x, AirReading like) {
        return new MoistAir(x[0], x[1], like.pressurePa(), like.formula());
    }

    private static void same(UncertaintyBudget known, UncertaintyBudget moved) {
        assertThat(known.value()).isEqualTo(moved.value());
        for (int i = 0; i < known.lines().size(); i++) {
            assertThat(known.lines().get(i).sensitivity())
                    .isCloseTo(moved.lines().get(i).sensitivity(), within(1e-7));
        }
        assertThat(known.standardUncertainty()).isCloseTo(moved.standardUncertainty(), within(1e-7));
    }

    private static AirReading reading(double tempC, double uTemp, double rhPct, double uRh) {
        return AirReading.of(UncertainValue.of(tempC, uTemp), UncertainValue.of(rhPct, uRh), 101_325);
    }
}
