package org.tableweather.analyzers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** The two ways in which the benchmarks pass over trials come to one answer, so that what is timed is the same work. */
class HeldTrialsTest {
    private static final HeldTrials HELD = HeldTrials.draw(12, 4, 15, 3);

    @Test
    void areReadBackAsTheyWereWritten(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("held.bin");
        HELD.write(file);

        HeldTrials read = HeldTrials.read(file);

        assertThat(Files.size(file)).isEqualTo(8 * (3 + 3L * 12 * 4 * 15));
        assertThat(read.rhPct()).containsExactly(HELD.rhPct());
        assertThat(read.tempC()).containsExactly(HELD.tempC());
        assertThat(read.angleDeg()).containsExactly(HELD.angleDeg());
        assertThat(new int[] {read.rooms(), read.sessions(), read.trials()}).containsExactly(12, 4, 15);
    }

    @Test
    void giveTheFitThatTheAnalyzerGives() {
        NestedFit fit = HeldFit.fit(HELD.pass());
        Analysis analysis =
                answer(AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow());

        assertThat(analysis).isInstanceOfSatisfying(Analysis.Estimated.class, estimated -> {
            Analysis.Estimate slope = estimated.estimates().stream()
                    .filter(estimate -> estimate.name().equals("humidity"))
                    .findFirst()
                    .orElseThrow();
            assertThat(slope.value()).isCloseTo(fit.coefficient(1).orElseThrow().value(), within(1e-9));
            assertThat(slope.standardError())
                    .isCloseTo(fit.coefficient(1).orElseThrow().standardError(), within(1e-9));
        });
    }

    private static <S> Analysis answer(Analyzer<S> analyzer) {
        return AnalysisRun.conclude(analyzer, Summaries.of(HeldSummaries.of(analyzer, HELD)), Map.of())
                .analysis();
    }

    @Test
    void tellTheMemoryOfAProgram() throws IOException, InterruptedException {
        Measured told = Measured.run(Path.of("."), Map.of(), List.of("sleep", "0.2"));

        assertThat(told.seconds()).isGreaterThan(0.19);
        if (Files.exists(Path.of("/proc/self/status"))) {
            assertThat(told.peakMegabytes()).isBetween(0.1, 100.0);
        } else {
            assertThat(told.peakMegabytes()).isNaN();
        }
    }
}
