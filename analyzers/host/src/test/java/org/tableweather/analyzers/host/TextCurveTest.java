package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class TextCurveTest {
    private static final AnalysisRun RUN = DrawnRuns.withRooms(12, true);

    @Test
    void showsBandsMeanPointsAndAxesWithUnits() {
        assertThat(TextCurve.of(RUN, 80, TextCurve.Ink.UNICODE))
                .contains("INVENTED DATA")
                .contains("final rebound angle, deg from the normal")
                .contains("relative humidity, %")
                .contains("━ mean of all rooms")
                .contains("▒ mean of all rooms, 95 %")
                .contains("l room-11")
                .contains("34 ┤")
                .containsPattern("░+l░+");
    }

    @Test
    void staysWithinTheTerminal() {
        assertThat(TextCurve.of(RUN, 60, TextCurve.Ink.UNICODE).lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(60));
    }

    @Test
    void needsNothingButAsciiWhenAskedTo() {
        assertThat(StandardCharsets.US_ASCII.newEncoder().canEncode(TextCurve.of(RUN, 80, TextCurve.Ink.ASCII)))
                .isTrue();
    }

    @Test
    void fallsFromLeftToRightAsTheMeanDoes() {
        String[] rows = TextCurve.of(RUN, 80, TextCurve.Ink.UNICODE).lines().toArray(String[]::new);
        int last = -1;
        for (String row : rows) {
            int mean = row.length() > 9 && row.contains("░") ? row.indexOf('━') : -1;
            if (mean >= 0 && row.contains("│")) {
                assertThat(mean).isGreaterThan(last);
                last = mean;
            }
        }
        assertThat(last).as("the mean reaches the right half").isGreaterThan(40);
    }

    @Test
    void saysWhyThereIsNothingToDraw() {
        assertThatThrownBy(() -> TextCurve.of(DrawnRuns.declined(), 80, TextCurve.Ink.ASCII))
                .isInstanceOf(ChartUnavailable.class)
                .hasMessageContaining("1 session < 3");
    }
}
