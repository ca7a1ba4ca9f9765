package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.ClimateReading;

/** Series with a known difference by construction; the bounds of the verdict are those of Morgner 2017. */
class LoggerComparisonTest {
    private static final Instant START = Instant.parse("2026-01-12T18:00:00Z");
    private static final Duration GAP = Duration.ofMinutes(30);

    @Test
    void findsAConstantOffsetAtUnlikeTimes() {
        List<ClimateReading> first = series("a", 0, 10, 20, 0, 0);
        List<ClimateReading> second = series("b", 3, 10, 20, 0.2, 6);
        LoggerComparison found = LoggerComparison.of(first, second, GAP).orElseThrow();
        // The second log starts after the first one's first time.
        assertThat(found.pairs()).isEqualTo(19);
        assertThat(found.tempK().mean()).isCloseTo(0.2, within(1e-12));
        assertThat(found.tempK().standardDeviation()).isCloseTo(0, within(1e-12));
        assertThat(found.rhPct().mean()).isCloseTo(6, within(1e-9));
        assertThat(found.rhPct().least()).isCloseTo(6, within(1e-9));
        assertThat(found.rhPct().greatest()).isCloseTo(6, within(1e-9));
        assertThat(found.agreement()).isEqualTo(LoggerComparison.Agreement.UNCALIBRATED);
    }

    /** The same vapour in a corner 1 K warmer reads 3.05 %RH less at 22 °C, 50 % ('psy.drh_dt'): no fault of the sensor. */
    @Test
    void tellsAWarmerCornerFromAFault() {
        double warmRh = MoistAir.of(22, 50).rhPctAt(23);
        List<ClimateReading> room = List.of(at("a", 0, 22, 50), at("a", 10, 22, 50), at("a", 20, 22, 50));
        List<ClimateReading> corner = List.of(at("b", 0, 23, warmRh), at("b", 10, 23, warmRh), at("b", 20, 23, warmRh));
        LoggerComparison found = LoggerComparison.of(room, corner, GAP).orElseThrow();
        assertThat(found.rhPct().mean()).isCloseTo(-3.05, within(0.15));
        assertThat(found.sameAirRhPct().mean()).isCloseTo(0, within(1e-9));
        assertThat(found.agreement()).isEqualTo(LoggerComparison.Agreement.NEAR);
        assertThat(found.differInTemperature()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"3.9, NEAR", "4.1, UNCALIBRATED", "-14.9, UNCALIBRATED", "15.1, FAULTY", "-20, FAULTY"})
    void judgesTheOffsetByWhatWasPublished(double offset, LoggerComparison.Agreement agreement) {
        LoggerComparison found = LoggerComparison.of(series("a", 0, 10, 5, 0, 0), series("b", 0, 10, 5, 0, offset), GAP)
                .orElseThrow();
        assertThat(found.agreement()).isEqualTo(agreement);
        assertThat(found.differInTemperature()).isFalse();
    }

    @Test
    void spreadIsTheSampleStandardDeviation() {
        List<ClimateReading> first = List.of(at("a", 0, 21, 50), at("a", 10, 21, 50), at("a", 20, 21, 50));
        List<ClimateReading> second = List.of(at("b", 0, 21, 51), at("b", 10, 21, 53), at("b", 20, 21, 55));
        LoggerComparison found = LoggerComparison.of(first, second, GAP).orElseThrow();
        assertThat(found.rhPct()).isEqualTo(new LoggerComparison.Difference(3, 2, 1, 5));
    }

    @Test
    void drawsNoLineAcrossWideGapsOrEnds() {
        List<ClimateReading> first = series("a", 0, 10, 20, 0, 0);
        List<ClimateReading> holes = List.of(at("b", 35, 21, 45), at("b", 55, 21, 45), at("b", 125, 21, 45));
        LoggerComparison found = LoggerComparison.of(first, holes, GAP).orElseThrow();
        // 40 and 50 min alone: before 35 and after 125 there is nothing, 55 to 125 is too wide.
        assertThat(found.pairs()).isEqualTo(2);
    }

    @Test
    void doesNotMindTheOrderOfRowsOrFailedReadings() {
        List<ClimateReading> first = new ArrayList<>(series("a", 0, 10, 20, 0, 0));
        List<ClimateReading> second = new ArrayList<>(series("b", 0, 10, 20, 0, 2));
        LoggerComparison straight = LoggerComparison.of(first, second, GAP).orElseThrow();
        Collections.reverse(first);
        Collections.swap(second, 2, 11);
        second.add(at("b", 47, 21, Double.NaN));
        second.add(at("b", 48, Double.NaN, 40));
        assertThat(LoggerComparison.of(first, second, GAP)).contains(straight);
    }

    @Test
    void isEmptyWithoutTwoCommonTimes() {
        assertThat(LoggerComparison.of(List.of(), series("b", 0, 10, 5, 0, 0), GAP))
                .isEmpty();
        assertThat(LoggerComparison.of(List.of(at("a", 10, 21, 50)), series("b", 0, 10, 5, 0, 0), GAP))
                .isEmpty();
        assertThat(LoggerComparison.of(series("a", 0, 10, 5, 0, 0), series("b", 500, 10, 5, 0, 0), GAP))
                .isEmpty();
    }

    /** A room that dries evenly, so that straight lines between readings are exact. */
    private static List<ClimateReading> series(
            String id, int from, int stepMinutes, int count, double tempOffset, double rhOffset) {
        List<ClimateReading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int minute = from + i * stepMinutes;
            readings.add(at(id, minute, 21 + tempOffset + 0.002 * minute, 45 + rhOffset - 0.01 * minute));
        }
        return readings;
    }

    private static ClimateReading at(String id, int minute, double tempC, double rhPct) {
        return new ClimateReading(id, START.plus(Duration.ofMinutes(minute)), tempC, rhPct, Double.NaN, "room");
    }
}
