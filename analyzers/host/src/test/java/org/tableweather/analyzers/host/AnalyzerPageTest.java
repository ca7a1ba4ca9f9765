package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;

class AnalyzerPageTest {

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "one-two",
            "1.2.3",
            "4",
            "One and two",
            "One | two?",
            "By counting.",
            List.of("Numbers exist."),
            List.of("no numbers"),
            List.of(new ParameterInfo("limit", "highest | lowest", "m", "3", List.of("3", "4"))),
            List.of("session"),
            List.of("Welford1962", "NoSuchKey1900"));

    @Test
    void saysWhatTheAnalyzerSays() {
        assertThat(AnalyzerPage.of(INFO))
                .startsWith("## one-two\n\n**One | two?**\n\nOne and two, version 1.2.3, summary 4.\n")
                .contains("**Method.** By counting.", "- Numbers exist.", "- no numbers")
                .contains("| `limit` | highest \\| lowest | m | `3` | `3`, `4` |")
                .contains("`session`.")
                .contains("- `Welford1962` (paper): Welford")
                .endsWith("- `NoSuchKey1900`\n");
    }

    @Test
    void leavesOutPartsThatAreEmpty() {
        AnalyzerInfo bare = new AnalyzerInfo(
                "bare", "1.0.0", "1", "Bare", "What?", "None.", List.of(), List.of(), List.of(), List.of(), List.of());

        assertThat(AnalyzerPage.of(bare))
                .doesNotContain("Assumptions", "Declines", "| parameter", "Columns", "Sources");
        assertThat(AnalyzerPage.explained(INFO).sources()).hasSize(1);
        assertThat(AnalyzerPage.of(List.of())).startsWith("# Analyzers\n");
    }
}
