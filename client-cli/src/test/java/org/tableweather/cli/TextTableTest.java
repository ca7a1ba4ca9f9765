package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TextTableTest {

    @Test
    void alignsNumbersToTheRightAndWordsToTheLeft() {
        String text = TextTable.of("name", "value")
                .row("humidity", "-0.8")
                .row("intercept", "31.25")
                .text();

        assertThat(text).isEqualTo("name       value\nhumidity    -0.8\nintercept  31.25\n");
    }

    @Test
    void endsNoLineWithBlanks() {
        assertThat(TextTable.of("a", "note").row("1", "").text().lines()).allMatch(line -> !line.endsWith(" "));
    }
}
