package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

class ClimateAirTest {

    private static JsonNode figure(JsonNode report, String name) {
        for (JsonNode figure : report.path("values")) {
            if (figure.path("name").asText().equals(name)) {
                return figure;
            }
        }
        throw new AssertionError(name + " is not in " + report);
    }

    private static double value(JsonNode report, String name) {
        return figure(report, name).path("value").asDouble(Double.NaN);
    }

    /** PsychroLib 1.1.1 at 101 325 Pa, the row 25 °C, 20 % of schema's psychrometric_cases.csv. */
    @Test
    void givesTheStateOfTheReferenceLibrary() throws Exception {
        JsonNode report = json("--temp-c", "25", "--rh-pct", "20");

        assertThat(value(report, "dew point")).isCloseTo(0.501, within(0.0006));
        assertThat(value(report, "mixing ratio")).isCloseTo(3.9151, within(0.00006));
        assertThat(value(report, "wet bulb")).isCloseTo(12.513, within(0.0016));
        assertThat(value(report, "enthalpy")).isCloseTo(35.124, within(0.0006));
        assertThat(value(report, "absolute humidity")).isCloseTo(4.6063, within(0.00006));
    }

    private static JsonNode json(String... options) throws Exception {
        String[] arguments = new String[options.length + 3];
        arguments[0] = "climate";
        arguments[1] = "air";
        arguments[2] = "--json";
        System.arraycopy(options, 0, arguments, 3, options.length);
        Ran ran = Ran.with(arguments);
        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        return AnalyzeCommandTest.parsed(ran.out());
    }

    /** NwsHeatIndex, printed chart: 90 °F and 60 % feel like 100 °F, extreme caution. */
    @Test
    void sortsTheHeatAsTheServiceDoes() throws Exception {
        JsonNode report = json("--temp-f", "90", "--rh-pct", "60");

        assertThat(value(report, "heat index")).isCloseTo((100 - 32) / 1.8, within(0.3));
        assertThat(figure(report, "heat index").path("words").asText()).contains("extreme caution");
        assertThat(report.path("cautions").findValuesAsText("id")).contains("heat.index");
    }

    @Test
    void statesUncertaintiesWhenBothAccuraciesAreStated() throws Exception {
        JsonNode with = json("--temp-c", "21", "--rh-pct", "38", "--temp-accuracy", "0.3", "--rh-accuracy", "2");
        JsonNode without = json("--temp-c", "21", "--rh-pct", "38", "--temp-accuracy", "0.3");

        // 1.15 %RH at 21 °C moves the dew point by about 0.44 K, 0.17 K of temperature by 0.16 K
        assertThat(figure(with, "dew point").path("standardUncertainty").asDouble())
                .isCloseTo(Math.hypot(0.44, 0.16), within(0.03));
        assertThat(figure(with, "wet bulb").path("standardUncertainty").asDouble())
                .isBetween(0.1, 0.4);
        assertThat(figure(without, "dew point").path("standardUncertainty").isNull())
                .isTrue();
        assertThat(figure(without, "dew point").path("reference").asText()).isEqualTo("ASHRAE2017");
    }

    @Test
    void tellsWhatAHeatedBedAndAColdOneFeel() throws Exception {
        JsonNode heated = json("--temp-c", "21", "--rh-pct", "50", "--bed-c", "30");
        JsonNode cold = json("--temp-c", "21", "--rh-pct", "60", "--bed-c", "10");

        // saturation pressures 2488 and 4246 Pa (WagnerPruss1993): 50 % becomes 29.3 %
        assertThat(value(heated, "relative humidity at the bed")).isCloseTo(29.3, within(0.1));
        assertThat(value(heated, "estimated regain of the cloth")).isLessThan(10);
        assertThat(figure(cold, "relative humidity at the bed").path("words").asText())
                .contains("condenses");
        assertThat(cold.path("cautions")).isNotEmpty();
    }

    @Test
    void saysItInWordsAndRefusesWhatNoFormulaCovers() {
        Ran ran = Ran.with("climate", "air", "--temp-c", "21", "--rh-pct", "38", "--altitude-m", "1500");

        assertThat(ran.out()).contains("dew point").contains("ASHRAE2017").contains("Formulas: ");
        assertThat(ran.out()).containsPattern("pressure 845\\d\\d Pa");
        Ran wrong = Ran.with("climate", "air", "--temp-c", "21", "--rh-pct", "138");
        assertThat(wrong.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(wrong.err()).contains("rhPct 138");
        assertThat(Ran.with("climate", "air", "--temp-c", "21", "--rh-pct", "100")
                        .exitCode())
                .isEqualTo(ExitCodes.DONE);
        assertThat(Ran.with("climate", "air", "--temp-c", "21", "--rh-pct", "0").exitCode())
                .isEqualTo(ExitCodes.DONE);
    }
}
