package org.tableweather.schema.logger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.ClimateReading;

/** Expected values by hand: means of three and five whole numbers. */
class SmoothingTest {
    private static final Instant START = Instant.parse("2026-01-12T17:00:00Z");
    private static final Smoothing FOUR_MINUTES = new Smoothing(Duration.ofMinutes(4), Duration.ofMinutes(3));

    private static ClimateReading at(int minute, double rhPct) {
        return new ClimateReading("h1", START.plus(Duration.ofMinutes(minute)), 20, rhPct, Double.NaN, "room");
    }

    private static List<ClimateReading> minutes(double... rhPct) {
        List<ClimateReading> readings = new ArrayList<>();
        for (int i = 0; i < rhPct.length; i++) {
            readings.add(at(i, rhPct[i]));
        }
        return readings;
    }

    @Test
    void takesTheMeanOfTheWindowAndLessAtTheEnds() {
        assertThat(FOUR_MINUTES.of(minutes(40, 45, 40, 50, 40, 44)))
                .extracting(ClimateReading::rhPct)
                .containsExactly(40.0, 125 / 3.0, 215 / 5.0, 219 / 5.0, 134 / 3.0, 44.0);
    }

    @Test
    void leavesASteadyDriftAsItIs() {
        List<ClimateReading> drift = minutes(40, 41, 42, 43, 44, 45, 46);

        assertThat(FOUR_MINUTES.of(drift)).isEqualTo(drift);
    }

    @Test
    void doesNotReachAcrossAGap() {
        List<ClimateReading> readings = List.of(at(0, 40), at(1, 40), at(10, 60), at(11, 60));

        assertThat(FOUR_MINUTES.of(readings)).isEqualTo(readings);
    }

    @Test
    void sortsByTimeAndKeepsWhatIsNotMeasuredEmpty() {
        List<ClimateReading> smooth = FOUR_MINUTES.of(List.of(at(2, 42), at(0, 40), at(1, 47)));

        assertThat(smooth).extracting(ClimateReading::time).isSorted();
        assertThat(smooth.get(1).rhPct()).isCloseTo(43, within(1e-12));
        assertThat(smooth.get(1).pressureHpa()).isNaN();
    }

    @Test
    void statesItselfAndWantsAWindow() {
        assertThat(FOUR_MINUTES.inWords()).contains("over 240 s").contains("more than 180 s");
        assertThatThrownBy(() -> new Smoothing(Duration.ZERO, Duration.ofMinutes(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
