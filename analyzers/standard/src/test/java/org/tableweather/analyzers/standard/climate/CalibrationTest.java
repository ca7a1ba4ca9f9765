package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.standard.uncertainty.Propagation;
import org.tableweather.analyzers.standard.uncertainty.UncertainInputs;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.schema.climate.SaltSolution;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Instrument;

class CalibrationTest {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final double[] READINGS = GoldenTable.column("gum_h3", "reading_c");
    private static final double[] CORRECTIONS = GoldenTable.column("gum_h3", "correction_c");
    /** Half-width 0.8 %RH of hysteresis as a rectangle: 0.8/√3. */
    private static final double HYSTERESIS = 0.8 * 0.5773502691896258;

    @Nested
    class Line {
        /** JCGM 100, example H.3 with t₀ = 20 °C. */
        @Test
        void isTheGuidesExample() {
            CalibrationLine line = CalibrationLine.fit(READINGS, CORRECTIONS, 20);
            assertThat(line.intercept()).isCloseTo(-0.1712, within(5e-5));
            assertThat(line.interceptUncertainty()).isCloseTo(0.0029, within(5e-5));
            assertThat(line.slope()).isCloseTo(0.00218, within(5e-6));
            assertThat(line.slopeUncertainty()).isCloseTo(0.00067, within(5e-6));
            assertThat(line.correlation()).isCloseTo(-0.930, within(5e-4));
            assertThat(line.scatter()).isCloseTo(0.0035, within(5e-5));
            UncertainValue at30 = line.correctionAt(30);
            assertThat(at30.value()).isCloseTo(-0.1494, within(5e-5));
            assertThat(at30.standardUncertainty()).isCloseTo(0.0041, within(5e-5));
            assertThat(at30.degreesOfFreedom()).isEqualTo(9);
        }

        @Test
        void doesNotDependOnWhereItsOriginLies() {
            UncertainValue here = CalibrationLine.fit(READINGS, CORRECTIONS, 20).correctionAt(25);
            UncertainValue there =
                    CalibrationLine.fit(READINGS, CORRECTIONS, -7).correctionAt(25);
            assertThat(there.value()).isCloseTo(here.value(), within(1e-14));
            assertThat(there.standardUncertainty()).isCloseTo(here.standardUncertainty(), within(1e-13));
        }

        @Test
        void wantsThreePointsThatDiffer() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> CalibrationLine.fit(new double[] {1, 2}, new double[] {1, 2}, 0))
                    .withMessageContaining("points 2 < 3");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> CalibrationLine.fit(new double[] {5, 5, 5}, new double[] {1, 2, 3}, 0))
                    .withMessageContaining("all 5.0");
        }
    }

    @Nested
    class TwoSalts {
        /** Worked corrections over MgCl₂ and NaCl at 20 °C (33.07, 75.47 %): gain 0.990654, offset −1.701963; gain 0.983759. */
        @ParameterizedTest
        @CsvSource({"35.1, 77.9, 60.0, 57.7373", "33.9, 77.0, 55.0, 53.8273"})
        void drawTheLineThroughBoth(double first, double second, double raw, double corrected) {
            InstrumentCorrection correction = humidity(tabled(first, 33.07, 0.18), tabled(second, 75.47, 0.14));
            assertThat(correction.kind()).isEqualTo(InstrumentCorrection.Kind.TWO_POINT);
            CorrectedReading reading = correction.apply(raw);
            assertThat(reading.value()).isCloseTo(corrected, within(5e-5));
            assertThat(reading.extrapolated()).isFalse();
        }

        /** The general law on the line's own formula gives the same, but for the gain's 1 % on the display's step. */
        @Test
        void carryTheUncertaintyOfBothReferences() {
            InstrumentCorrection correction = InstrumentCorrection.of(
                    Quantity.HUMIDITY,
                    List.of(tabled(35.1, 33.07, 0.18), tabled(77.9, 75.47, 0.14)),
                    UNKNOWN,
                    OptionalDouble.of(0.1));
            UncertainValue step = UncertainValue.rectangular(0, 0.05);
            UncertainInputs inputs = UncertainInputs.none()
                    .and("raw", UncertainValue.of(45, step.standardUncertainty()))
                    .and("x1", UncertainValue.of(35.1, step.standardUncertainty()))
                    .and("x2", UncertainValue.of(77.9, step.standardUncertainty()))
                    .and("r1", UncertainValue.of(33.07, 0.18))
                    .and("r2", UncertainValue.of(75.47, 0.14))
                    .and("hysteresis", UncertainValue.of(0, HYSTERESIS));
            double law = Propagation.of(x -> x[3] + (x[0] - x[1]) * (x[4] - x[3]) / (x[2] - x[1]) + x[5], inputs)
                    .standardUncertainty();
            assertThat(correction.apply(45).standardUncertainty().orElseThrow()).isCloseTo(law, within(1e-4));
        }

        @Test
        void sayWhenAReadingLiesOutside() {
            InstrumentCorrection correction = humidity(tabled(35.1, 33.07, 0.18), tabled(77.9, 75.47, 0.14));
            CorrectedReading inside = correction.apply(50);
            CorrectedReading outside = correction.apply(20);
            assertThat(outside.extrapolated()).isTrue();
            assertThat(outside.standardUncertainty().orElseThrow())
                    .isGreaterThan(inside.standardUncertainty().orElseThrow());
        }

        @Test
        void neverLeadBeyondAllHumidities() {
            InstrumentCorrection correction = humidity(tabled(30, 33.07, 0.18), tabled(70, 75.47, 0.14));
            assertThat(correction.apply(99).value()).isEqualTo(100);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> correction.apply(104))
                    .withMessageStartingWith("rhPct 104 % is above 100 %");
        }
    }

    @Nested
    class OnePoint {
        @Test
        void isAnOffset() {
            CalibrationPoint point = CalibrationPoint.over(SaltSolution.SODIUM_CHLORIDE, 20, 78.0);
            InstrumentCorrection correction = humidity(point);
            assertThat(correction.kind()).isEqualTo(InstrumentCorrection.Kind.OFFSET);
            // Greenspan: 75.47 % at 20 °C, ± 0.14; the table cuts the polynomial's 75.479 off.
            assertThat(correction.apply(50).value()).isCloseTo(50 - 2.53, within(0.0101));
            assertThat(correction.apply(50).extrapolated()).isTrue();
            assertThat(correction.apply(70).extrapolated()).isFalse();
            assertThat(correction.apply(70).standardUncertainty().orElseThrow())
                    .isCloseTo(Math.hypot(0.14 * 0.57735, HYSTERESIS), within(1e-5));
        }

        @Test
        void pointsCloseTogetherAreAnOffsetToo() {
            InstrumentCorrection correction = humidity(tabled(50, 48, 0.5), tabled(54, 51, 0.5));
            assertThat(correction.kind()).isEqualTo(InstrumentCorrection.Kind.OFFSET);
            assertThat(correction.apply(52).value()).isCloseTo(52 - 2.5, within(1e-12));
        }
    }

    @Nested
    class ManyPoints {
        /** The eleven points of H.3 as an instrument: with references far better than the scatter, the line's own uncertainty stands. */
        @Test
        void takeTheScatterWhenItIsLarger() {
            CorrectedReading reading = thermometer(1e-4, OptionalDouble.empty()).apply(30);
            assertThat(reading.kind()).isEqualTo(InstrumentCorrection.Kind.LINE);
            assertThat(reading.value()).isCloseTo(30 - 0.1494, within(5e-5));
            assertThat(reading.standardUncertainty().orElseThrow()).isCloseTo(0.0041, within(5e-5));
            assertThat(reading.degreesOfFreedom()).isEqualTo(9);
            assertThat(reading.extrapolated()).isTrue();
            assertThat(reading.uncertain().orElseThrow().degreesOfFreedom()).isEqualTo(9);
        }

        /** One reference thermometer errs alike at all points: its uncertainty is not averaged away. */
        @Test
        void oneReferenceErrsAlikeEverywhere() {
            CorrectedReading reading = thermometer(0.05, OptionalDouble.empty()).apply(24);
            assertThat(reading.standardUncertainty().orElseThrow()).isCloseTo(0.05, within(1e-12));
            assertThat(reading.degreesOfFreedom()).isInfinite();
        }

        /** Three salts err each for itself: at the mean reading the variance of the correction is that of a mean, u²/3. */
        @Test
        void saltsErrEachForItself() {
            InstrumentCorrection correction = humidity(tabled(30, 31, 0.6), tabled(50, 51, 0.6), tabled(70, 71, 0.6));
            double u = correction.apply(50).standardUncertainty().orElseThrow();
            assertThat(u * u - HYSTERESIS * HYSTERESIS).isCloseTo(0.6 * 0.6 / 3, within(1e-12));
        }

        private InstrumentCorrection thermometer(double reference, OptionalDouble resolution) {
            List<CalibrationPoint> points = new ArrayList<>();
            for (int i = 0; i < READINGS.length; i++) {
                points.add(new CalibrationPoint(
                        READINGS[i],
                        READINGS[i] + CORRECTIONS[i],
                        OptionalDouble.of(reference),
                        CalibrationPoint.Kind.INSTRUMENT));
            }
            return InstrumentCorrection.of(Quantity.TEMPERATURE, points, UNKNOWN, resolution);
        }
    }

    @Nested
    class WithoutCalibration {
        /** 'sensor.sht3x': ± 2 %RH as a rectangle is u = 1.155 %RH. */
        @Test
        void theStatedAccuracyStands() {
            CorrectedReading reading = InstrumentCorrection.of(
                            Quantity.HUMIDITY, List.of(), OptionalDouble.of(2), UNKNOWN)
                    .apply(50);
            assertThat(reading.kind()).isEqualTo(InstrumentCorrection.Kind.NONE);
            assertThat(reading.value()).isEqualTo(50);
            assertThat(reading.standardUncertainty().orElseThrow()).isCloseTo(1.155, within(5e-4));
            assertThat(reading.extrapolated()).isFalse();
        }

        /** JCGM 100, F.2.2.1: a display's step δ adds u = 0.29 δ. */
        @Test
        void theDisplayAddsItsStep() {
            CorrectedReading reading = InstrumentCorrection.of(
                            Quantity.TEMPERATURE, List.of(), OptionalDouble.of(0), OptionalDouble.of(1))
                    .apply(21);
            assertThat(reading.standardUncertainty().orElseThrow()).isCloseTo(0.29, within(0.005));
        }

        @Test
        void withNothingStatedTheUncertaintyIsUnknown() {
            CorrectedReading reading = InstrumentCorrection.of(Quantity.HUMIDITY, List.of(), UNKNOWN, UNKNOWN)
                    .apply(50);
            assertThat(reading.standardUncertainty()).isEmpty();
            assertThat(reading.uncertain()).isEmpty();
        }
    }

    @Nested
    class FromTheRecord {
        private final LocalDate session = LocalDate.of(2026, 1, 12);

        @Test
        void takesTheNewestCalibrationUpToTheSession() {
            Instrument instrument = instrument(
                    salt("2024-05-01", "NaCl", 75.47, 80.0),
                    salt("2025-11-03", "NaCl", 75.47, 77.9),
                    salt("2025-11-01", "MgCl2", 33.07, 35.1),
                    salt("2026-02-01", "NaCl", 75.47, 70.0));
            InstrumentCorrection correction = InstrumentCorrection.of(instrument, Quantity.HUMIDITY, session);
            assertThat(correction.kind()).isEqualTo(InstrumentCorrection.Kind.TWO_POINT);
            assertThat(correction.apply(60).value()).isCloseTo(57.7373, within(5e-5));
            // Unstated: the largest of Greenspan's ± between 15 and 30 °C, 0.21 and 0.18, as rectangles.
            double middle = correction.apply(56.5).standardUncertainty().orElseThrow();
            assertThat(middle)
                    .isCloseTo(
                            Math.sqrt((0.21 * 0.21 + 0.18 * 0.18) / 3 / 4
                                    + HYSTERESIS * HYSTERESIS
                                    + 0.1 * 0.1 / 12 * 1.5),
                            within(1e-9));
        }

        @Test
        void elseTheEarliestAfterIt() {
            Instrument instrument =
                    instrument(salt("2026-03-01", "NaCl", 75.47, 76.47), salt("2026-08-01", "NaCl", 75.47, 70));
            InstrumentCorrection correction = InstrumentCorrection.of(instrument, Quantity.HUMIDITY, session);
            assertThat(correction.apply(70).value()).isCloseTo(69, within(1e-9));
        }

        @Test
        void aReferenceOfWhichNothingIsStatedIsNoBetterThanTheInstrument() {
            Calibration against = new Calibration(
                    LocalDate.of(2026, 1, 1),
                    "humidity",
                    Optional.of("reference-instrument"),
                    Optional.empty(),
                    50,
                    52,
                    UNKNOWN);
            double u = InstrumentCorrection.of(instrument(against), Quantity.HUMIDITY, session)
                    .apply(52)
                    .standardUncertainty()
                    .orElseThrow();
            assertThat(u).isGreaterThan(2 * 0.57735).isLessThan(2 * 0.57735 + 0.1);
        }

        @Test
        void withNothingStatedOfEitherTheUncertaintyIsUnknown() {
            CalibrationPoint against = new CalibrationPoint(52, 50, UNKNOWN, CalibrationPoint.Kind.INSTRUMENT);
            CorrectedReading reading = humidity(against).apply(52);
            assertThat(reading.value()).isEqualTo(50);
            assertThat(reading.standardUncertainty()).isEmpty();
        }

        @Test
        void bothQuantitiesMakeTheTrialsAir() {
            Instrument instrument = instrument(salt("2026-01-01", "NaCl", 75.47, 77.47));
            AirReading air = InstrumentCorrections.of(instrument, session)
                    .air(21, 70, 100_000)
                    .orElseThrow();
            assertThat(air.rhPct().value()).isCloseTo(68, within(1e-9));
            assertThat(air.tempC().value()).isEqualTo(21);
            // ± 0.3 K and a step of 0.1 K as rectangles.
            assertThat(air.tempC().standardUncertainty()).isCloseTo(Math.sqrt(0.09 / 3 + 0.01 / 12), within(1e-12));
            assertThat(air.pressurePa()).isEqualTo(100_000);
            Instrument silent =
                    new Instrument("h", Optional.empty(), List.of(), UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, List.of());
            assertThat(InstrumentCorrections.of(silent, session).air(21, 70, 100_000))
                    .isEmpty();
        }

        private Calibration salt(String on, String salt, double reference, double reading) {
            return new Calibration(
                    LocalDate.parse(on),
                    "humidity",
                    Optional.of("saturated-salt"),
                    Optional.of(salt),
                    reference,
                    reading,
                    UNKNOWN);
        }

        private Instrument instrument(Calibration... calibrations) {
            return new Instrument(
                    "h1",
                    Optional.empty(),
                    List.of("temperature", "humidity"),
                    OptionalDouble.of(2),
                    OptionalDouble.of(0.3),
                    OptionalDouble.of(0.1),
                    OptionalDouble.of(0.1),
                    Arrays.asList(calibrations));
        }
    }

    /** Greenspan's ± for LiCl: 0.35 at 15 °C, 0.27 at 25 °C, as a rectangle. @source Greenspan1977 */
    @Test
    void aSaltOfStatedTemperatureHasTheUncertaintyOfThatTemperature() {
        assertThat(CalibrationPoint.of(overLithiumChloride(OptionalDouble.of(25)))
                        .referenceUncertainty()
                        .orElseThrow())
                .isCloseTo(0.27 / Math.sqrt(3), within(1e-12));
        assertThat(CalibrationPoint.of(overLithiumChloride(OptionalDouble.of(55)))
                        .referenceUncertainty()
                        .orElseThrow())
                .isCloseTo(0.35 / Math.sqrt(3), within(1e-12));
    }

    private static Calibration overLithiumChloride(OptionalDouble saltTempC) {
        return new Calibration(
                LocalDate.parse("2026-01-02"),
                "humidity",
                Optional.of("saturated-salt"),
                Optional.of("LiCl"),
                saltTempC,
                11.3,
                12.1,
                OptionalDouble.empty());
    }

    @Test
    void aPointWantsNumbers() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CalibrationPoint(Double.NaN, 75, UNKNOWN, CalibrationPoint.Kind.SALT))
                .withMessageContaining("reading NaN");
    }

    private static InstrumentCorrection humidity(CalibrationPoint... points) {
        return InstrumentCorrection.of(Quantity.HUMIDITY, List.of(points), UNKNOWN, UNKNOWN);
    }

    private static CalibrationPoint tabled(double reading, double reference, double u) {
        return new CalibrationPoint(reading, reference, OptionalDouble.of(u), CalibrationPoint.Kind.SALT);
    }
}
