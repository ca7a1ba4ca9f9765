package org.tableweather.schema.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatIndexTest {

    @Test
    void theRegressionRoundsToThePrintedChartInAllCellsButItsOneMisprint() {
        List<String> unlike = new ArrayList<>();
        List<GoldenTable.Row> rows = GoldenTable.rows("heat_index_chart");
        for (GoldenTable.Row row : rows) {
            double raw = HeatIndex.regression(row.number("temp_f"), row.number("rh_pct"));
            if (Math.abs(raw - row.number("chart_f")) > 0.5) {
                unlike.add(row.text("temp_f") + "/" + row.text("rh_pct"));
            }
        }
        assertThat(rows).hasSize(135);
        assertThat(unlike).containsExactly("90/45");
    }

    @Test
    void takesTheRightBranchEverywhere() {
        for (GoldenTable.Row row : GoldenTable.rows("heat_index_branches")) {
            assertThat(HeatIndex.fahrenheit(row.number("temp_f"), row.number("rh_pct")))
                    .as("" + row)
                    .isCloseTo(row.number("heat_index_f"), within(row.halfDigit("heat_index_f")));
        }
    }

    @Test
    void givesTheSecondSet() {
        for (GoldenTable.Row row : GoldenTable.rows("heat_index_second_set")) {
            double t = row.number("temp_f");
            double r = row.number("rh_pct");
            assertThat(HeatIndex.regression(t, r)).as("" + row).isCloseTo(row.number("regression_f"), within(0.00051));
            assertThat(HeatIndex.fahrenheit(t, r)).as("" + row).isCloseTo(row.number("heat_index_f"), within(0.00051));
        }
    }

    /** 'hi.cat' and 'hi.room': 80 °F, 80 % feels like 84.2 °F and lies in the caution band. */
    @Test
    void sortsTheHottestTrialClimateAsCaution() {
        double tempC = Fahrenheit.toCelsius(80);
        assertThat(HeatIndex.level(tempC, 80)).isEqualTo(HeatIndex.Level.CAUTION);
        assertThat(Fahrenheit.fromCelsius(HeatIndex.celsius(tempC, 80))).isCloseTo(84.23, within(0.0005));
    }

    /** Bounds of the bands as quoted from the service's chart; charts values 80/40, 90/50, 96/65, 100/65, 104/55 on it. */
    @ParameterizedTest
    @CsvSource({
        "68, 50, NONE",
        "84, 60, CAUTION",
        "90, 50, EXTREME_CAUTION",
        "96, 65, DANGER",
        "104, 55, EXTREME_DANGER",
        "110, 90, EXTREME_DANGER",
        "30, 90, NONE"
    })
    void sortsHeatIntoTheServicesBands(double tempF, double rhPct, HeatIndex.Level level) {
        assertThat(HeatIndex.level(Fahrenheit.toCelsius(tempF), rhPct)).isEqualTo(level);
    }

    @Test
    void givesNoNumberBeyondTheChart() {
        assertThat(HeatIndex.onChart(110, 90)).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HeatIndex.fahrenheit(110, 90))
                .withMessageContaining("beyond the printed chart");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HeatIndex.fahrenheit(113, 20))
                .withMessageContaining("tempF 113 °F is above 112 °F");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HeatIndex.fahrenheit(90, 101))
                .withMessageContaining("rhPct 101 % is above 100 %");
        assertThatIllegalArgumentException().isThrownBy(() -> HeatIndex.celsius(0, 50));
    }
}
