package org.tableweather.schema.caution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.schema.caution.HeldClimate.Attendance;
import org.tableweather.schema.climate.Fahrenheit;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.reference.References;

class CautionsTest {
    private static final Duration EVENING = Duration.ofHours(4);
    private static final MoistAir MILD = MoistAir.of(21, 45);
    private static final MoistAir HOT_AND_DAMP = MoistAir.of(Fahrenheit.toCelsius(80), 80);

    @Test
    void aMildRoomCallsForNone() {
        assertThat(Cautions.of(HeldClimate.of(MILD, EVENING).withBed(23))).isEmpty();
    }

    @Test
    void everyAdviceLeavesTheLastWordToOthersAndNamesItsSource() {
        HeldClimate worst = HeldClimate.of(HOT_AND_DAMP, Duration.ofDays(30))
                .withBed(18)
                .with(List.of(circuit(15, heater(1800))))
                .with(Attendance.UNATTENDED);
        List<Caution> found = Cautions.of(worst);
        assertThat(found)
                .extracting(Caution::id)
                .containsExactly(
                        "heat.index",
                        "damp.mould",
                        "damp.dew-point",
                        "condensation.bed",
                        "electric.continuous",
                        "heater.clearance",
                        "heater.unattended");
        assertThat(found).allSatisfy(caution -> {
            assertThat(caution.advice()).endsWith("people licensed for the work have the last word.");
            assertThat(References.byKey(caution.reference()))
                    .as(caution.reference())
                    .isPresent();
            assertThat(caution.unit()).isNotBlank();
            assertThat(caution.value()).isFinite();
        });
    }

    @Nested
    class Heat {
        /** Bands as quoted from the NWS chart: 80, 90, 103, 125 °F; 80 °F/80 % has 84.23 °F. */
        @ParameterizedTest
        @CsvSource({
            "80, 80, NOTE, 84.23, 80",
            "90, 60, CAUTION, 99.678, 90",
            "96, 65, DANGER, 121.032, 103",
            "104, 55, DANGER, 137.36, 125"
        })
        void isGradedByTheHeatIndex(double tempF, double rhPct, Caution.Level level, double index, double bound) {
            Caution caution = HeatCautions.of(MoistAir.of(Fahrenheit.toCelsius(tempF), rhPct))
                    .orElseThrow();
            assertThat(caution.id()).isEqualTo("heat.index");
            assertThat(caution.level()).isEqualTo(level);
            assertThat(caution.value()).isCloseTo(index, within(0.01));
            assertThat(caution.bound()).isEqualTo(bound);
            assertThat(caution.reference()).isEqualTo("NwsHeatIndex");
        }

        @Test
        void isGravestWhereTheChartHasNoNumber() {
            Caution caution = HeatCautions.of(MoistAir.of(43, 90)).orElseThrow();
            assertThat(caution.level()).isEqualTo(Caution.Level.DANGER);
            assertThat(caution.value()).isEqualTo(137.5);
            assertThat(HeatCautions.of(MoistAir.of(50, 20)))
                    .hasValueSatisfying(beyond -> assertThat(beyond.id()).isEqualTo("heat.air"));
        }
    }

    @Nested
    class Damp {
        /** 60 % for homes (EPA 402-K-02-003, from memory), 80 % at a surface for weeks (ASHRAE 160-2009). */
        @ParameterizedTest
        @CsvSource({
            "60, 4, none, NOTE",
            "61, 4, damp.room, NOTE",
            "61, 400, damp.room, CAUTION",
            "79.9, 4, damp.room, NOTE",
            "80, 4, damp.mould, NOTE",
            "80, 72, damp.mould, CAUTION",
            "80, 720, damp.mould, DANGER"
        })
        void isGradedByHumidityAndTime(double rhPct, long hours, String id, Caution.Level level) {
            List<Caution> found = DampCautions.of(MoistAir.of(15, rhPct), Duration.ofHours(hours));
            if (id.equals("none")) {
                assertThat(found).isEmpty();
            } else {
                assertThat(found).hasSize(1);
                assertThat(found.get(0).id()).isEqualTo(id);
                assertThat(found.get(0).level()).isEqualTo(level);
            }
        }

        /** ASHRAE 62.1-2022, 5.12: at most 15 °C; 80 °F, 80 % exceeds it by 8 K. */
        @Test
        void dewPointAboveTheVentilationStandardIsNoted() {
            Caution caution = DampCautions.of(HOT_AND_DAMP, EVENING).get(1);
            assertThat(caution.id()).isEqualTo("damp.dew-point");
            assertThat(caution.value() - caution.bound()).isCloseTo(7.93, within(0.01));
            assertThat(DampCautions.of(MoistAir.of(25, 53), EVENING)).isEmpty();
            assertThat(DampCautions.of(MoistAir.of(25, 0), EVENING)).isEmpty();
        }
    }

    @Nested
    class Bed {
        /** The dew point of 24 °C, 60 % is 15.763 °C (facts, 'condense.24_60'). */
        @Test
        void belowTheDewPointSweats() {
            assertThat(SurfaceCautions.of(MoistAir.of(24, 60), 15.76).get(0).id())
                    .isEqualTo("condensation.bed");
            assertThat(SurfaceCautions.of(MoistAir.of(24, 60), 15.77).get(0).id())
                    .isEqualTo("damp.bed");
        }

        /** In air of 22 °C, 50 % a surface is at 80 % at 14.516 °C (facts, 'condense.22_50'). */
        @Test
        void nearTheDewPointIsDamp() {
            assertThat(SurfaceCautions.of(MoistAir.of(22, 50), 14.51)).hasSize(1);
            assertThat(SurfaceCautions.of(MoistAir.of(22, 50), 14.52)).isEmpty();
        }

        @Test
        void heatedInDampAirIsNoFaultOfTheBed() {
            assertThat(SurfaceCautions.of(MoistAir.of(22, 95), 23)).isEmpty();
        }
    }

    @Nested
    class Electricity {
        /** NFPA 70, 210.20(A): 15 A at 120 V may carry 1440 W for three hours or more, 20 A 1920 W. */
        @Test
        void knowsWhatACircuitMayCarry() {
            assertThat(circuit(15, heater(100)).continuousWatts()).isCloseTo(1440, within(1e-9));
            assertThat(circuit(20, heater(100)).continuousWatts()).isCloseTo(1920, within(1e-9));
        }

        @ParameterizedTest
        @CsvSource({
            "1440, 4, none",
            "1500, 4, electric.continuous",
            "1500, 3, electric.continuous",
            "1500, 2, none",
            "1801, 2, electric.overload"
        })
        void isJudgedByLoadAndTime(double watts, long hours, String id) {
            List<Caution> found = ElectricCautions.of(circuit(15, heater(watts)), Duration.ofHours(hours));
            assertThat(found).extracting(Caution::id).isEqualTo(id.equals("none") ? List.of() : List.of(id));
        }

        @Test
        void countsEverythingOnTheCircuit() {
            Appliance dryer = new Appliance("dehumidifier", Appliance.Kind.DEHUMIDIFIER, 500);
            Circuit both = new Circuit(15, 120, List.of(heater(1000), dryer));
            assertThat(ElectricCautions.of(both, EVENING).get(0).value()).isEqualTo(1500);
        }

        @Test
        void refusesWhatIsNoCircuit() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Circuit(0, 120, List.of()))
                    .withMessageContaining("breakerAmps 0.0");
            assertThatIllegalArgumentException().isThrownBy(() -> new Circuit(15, Double.NaN, List.of()));
            assertThatIllegalArgumentException().isThrownBy(() -> heater(-5)).withMessageContaining("watts -5.0");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> HeldClimate.of(MILD, Duration.ofHours(-1)))
                    .withMessageContaining("held");
        }
    }

    @Nested
    class Heaters {
        @Test
        void areNeverLeftAlone() {
            HeldClimate plan = HeldClimate.of(MILD, Duration.ofHours(1)).with(List.of(circuit(20, heater(800))));
            assertThat(HeaterCautions.of(plan)).extracting(Caution::id).containsExactly("heater.clearance");
            assertThat(HeaterCautions.of(plan.with(Attendance.UNATTENDED)))
                    .extracting(Caution::id)
                    .containsExactly("heater.clearance", "heater.unattended");
        }

        @Test
        void aHumidifierAloneNeedsNoWarning() {
            Circuit mist = circuit(15, new Appliance("humidifier", Appliance.Kind.HUMIDIFIER, 40));
            HeldClimate plan = HeldClimate.of(MILD, EVENING).with(List.of(mist)).with(Attendance.UNATTENDED);
            assertThat(HeaterCautions.of(plan)).isEmpty();
        }
    }

    private static Circuit circuit(double amps, Appliance appliance) {
        return new Circuit(amps, 120, List.of(appliance));
    }

    private static Appliance heater(double watts) {
        return new Appliance("heater", Appliance.Kind.HEATER, watts);
    }
}
