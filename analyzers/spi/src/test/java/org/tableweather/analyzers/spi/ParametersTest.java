package org.tableweather.analyzers.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ParametersTest {

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "example",
            "1.0.0",
            "1",
            "Example",
            "?",
            "none",
            List.of(),
            List.of(),
            List.of(
                    new ParameterInfo("response", "what is explained", "1", "angle", List.of("angle", "offset")),
                    new ParameterInfo("from_pct", "where it begins", "%", "", List.of())),
            List.of(),
            List.of());

    @Test
    void fillsInStandardValues() {
        Parameters parameters = Parameters.of(INFO, Map.of());

        assertThat(parameters.text("response")).hasValue("angle");
        assertThat(parameters.text("from_pct")).isEmpty();
        assertThat(parameters.number("from_pct")).isEmpty();
    }

    @Test
    void readsNumbers() {
        assertThat(Parameters.of(INFO, Map.of("from_pct", "35.5")).number("from_pct"))
                .hasValue(35.5);
    }

    @Test
    void refusesWithNameValueAndRemedy() {
        assertThatThrownBy(() -> Parameters.of(INFO, Map.of("response", "speed")))
                .hasMessage("parameter response = speed is not one of angle, offset: choose one of them");
        assertThatThrownBy(() -> Parameters.of(INFO, Map.of("colour", "red")))
                .hasMessage("parameter colour is unknown to example: it takes response, from_pct");
        for (String text : List.of("wide", "NaN", "Infinity")) {
            Parameters parameters = Parameters.of(INFO, Map.of("from_pct", text));
            assertThatThrownBy(() -> parameters.number("from_pct"))
                    .hasMessage("parameter from_pct = " + text + " is not a finite number");
        }
    }

    @Test
    void foldsEitherOutcome() {
        Analysis declined =
                new Analysis.Declined(Analysis.Reason.TOO_FEW_RECORDS, "none", Map.of(), List.of(), List.of());

        assertThat(declined.<String>fold(Analysis.Estimated::sentence, Analysis.Declined::detail))
                .isEqualTo("none");
        assertThat(Analysis.Reason.TOO_FEW_RECORDS.schemaName()).isEqualTo("too-few-records");
    }
}
