package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class RunIdTest {
    private static final String HASH = "sha256:" + "0".repeat(64);

    // expected: printf '3:a-b5:1.0.04:shot1:k71:sha256:%064d' 0 | sha256sum
    @Test
    void isTheSha256OverTheInputsEachWithItsLength() {
        assertThat(RunId.of("a-b", "1.0.0", Map.of("shot", "k"), HASH))
                .isEqualTo("646406adcd4751b9e9750608e5e67505d70c7b8114b0d72cdbd5d58e440f64df");
    }

    @Test
    void differsWhereOneInputDoes() {
        String id = RunId.of("a", "1.0.0", Map.of("p", "q"), HASH);

        assertThat(RunId.of("b", "1.0.0", Map.of("p", "q"), HASH)).isNotEqualTo(id);
        assertThat(RunId.of("a", "1.0.1", Map.of("p", "q"), HASH)).isNotEqualTo(id);
        assertThat(RunId.of("a", "1.0.0", Map.of("p", "r"), HASH)).isNotEqualTo(id);
        assertThat(RunId.of("a", "1.0.0", Map.of("pq", ""), HASH)).isNotEqualTo(id);
        assertThat(RunId.of("a", "1.0.0", Map.of(), HASH)).isNotEqualTo(id);
        assertThat(RunId.of("a", "1.0.0", Map.of("p", "q"), "sha256:" + "1".repeat(64)))
                .isNotEqualTo(id);
    }

    @Test
    void doesNotDependOnTheOrderOfParametersOrSessions() {
        assertThat(RunId.of("a", "1", new java.util.TreeMap<>(Map.of("x", "1", "y", "2")), HASH))
                .isEqualTo(RunId.of("a", "1", new java.util.LinkedHashMap<>(Map.of("y", "2", "x", "1")), HASH));
        assertThat(Summaries.hash(java.util.List.of("b", "a"))).isEqualTo(Summaries.hash(java.util.List.of("a", "b")));
    }
}
