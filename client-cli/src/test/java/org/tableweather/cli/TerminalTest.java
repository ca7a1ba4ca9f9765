package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.host.TextCurve;

class TerminalTest {

    @Test
    void takesTheWidthThatTheEnvironmentStates() {
        assertThat(Terminal.of(Map.of("COLUMNS", "132"), StandardCharsets.UTF_8).columns())
                .isEqualTo(132);
        assertThat(Terminal.of(Map.of("COLUMNS", "wide"), StandardCharsets.UTF_8)
                        .columns())
                .isEqualTo(80);
    }

    @Test
    void drawsWithAsciiWhereTheLocaleKnowsNoMore() {
        assertThat(Terminal.of(Map.of(), StandardCharsets.US_ASCII).ink()).isEqualTo(TextCurve.Ink.ASCII);
        assertThat(Terminal.of(Map.of("TERM", "dumb"), StandardCharsets.UTF_8).ink())
                .isEqualTo(TextCurve.Ink.ASCII);
        assertThat(Terminal.of(Map.of("TERM", "xterm"), StandardCharsets.UTF_8).ink())
                .isEqualTo(TextCurve.Ink.UNICODE);
    }
}
