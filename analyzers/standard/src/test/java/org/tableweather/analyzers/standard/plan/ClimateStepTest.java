package org.tableweather.analyzers.standard.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.plan.ClimateStep.TimeConstant;

class ClimateStepTest {

    /** First-order lag: what is left after τ ln(step) is 1 %RH. The inverse, written out, is the outside check. */
    @Test
    void waitsUntilOnePercentOfHumidityIsLeft() {
        ClimateStep step = ClimateStep.of(65, 35, 21, Optional.of(new TimeConstant(2.5, 0.5)));

        ClimateStep.Lag lag = step.settling().orElseThrow();
        assertThat(30 * Math.exp(-lag.hours() / 2.5)).isCloseTo(1, within(1e-12));
        assertThat(30 * Math.exp(-lag.atMostHours() / 3)).isCloseTo(1, within(1e-12));
    }

    /** Saturated air at 21 °C holds 18.3 g/m³ (common table of psychrometry, from memory): 30 % of it. */
    @Test
    void tellsTheWaterThatTheAirTakesUp() {
        assertThat(ClimateStep.of(35, 65, 21, Optional.empty()).waterGPerM3()).isCloseTo(0.3 * 18.3, within(0.05));
        assertThat(ClimateStep.of(65, 35, 21, Optional.empty()).waterGPerM3()).isNegative();
        assertThat(ClimateStep.of(65, 35, 21, Optional.empty()).settling()).isEmpty();
    }

    @Test
    void refusesATimeConstantThatIsNone() {
        assertThatThrownBy(() -> new TimeConstant(0, 0)).hasMessageContaining("must be above 0");
        assertThatThrownBy(() -> new TimeConstant(2, 2)).hasMessageContaining("smaller");
        assertThatThrownBy(() -> new TimeConstant(2, Double.NaN)).hasMessageContaining("smaller");
    }
}
