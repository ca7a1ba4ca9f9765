package org.tableweather.analyzers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.bench.BenchOptions.Part;

class BenchOptionsTest {

    @Test
    void measuresEverythingUnlessTold() {
        assertThat(BenchOptions.of(List.of())).isEqualTo(BenchOptions.standard());
        assertThat(BenchOptions.standard().parts()).containsExactly(Part.values());
    }

    @Test
    void takesPartsAndSizes() {
        BenchOptions options = BenchOptions.of(
                List.of("--parts", "growth,peers", "--skip-r", "--growth-sessions", "100,200", "--repeats", "2"));

        assertThat(options.parts()).containsExactly(Part.PEERS, Part.GROWTH);
        assertThat(options.withR()).isFalse();
        assertThat(options.growthSessions()).containsExactly(100, 200);
        assertThat(options.repeats()).isEqualTo(2);
        assertThat(options.largeTrials()).isEqualTo(BenchOptions.standard().largeTrials());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--parts nothing        | --parts nothing is not known: choose of contribute",
                "--quick                | there is no option --quick",
                "--repeats              | --repeats needs a value",
                "--repeats 0            | --repeats 0 is not a whole number from 1",
                "--large-trials 1e7     | --large-trials 1e7 is not a whole number from 10000",
                "--growth-sessions 5,x  | --growth-sessions 5 is not a whole number from 100"
            })
    void namesWhatCannotBe(String arguments, String message) {
        assertThatThrownBy(() -> BenchOptions.of(List.of(arguments.split(" "))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(message);
    }
}
