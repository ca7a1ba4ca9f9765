package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;

class AnalysisJsonTest {

    @Test
    void readsBackWhatItWrote() throws Exception {
        AnalysisRun run = answered();

        AnalysisRun read = AnalysisJson.read(AnalysisJson.bytes(run));

        assertThat(read.analysis()).isEqualTo(run.analysis());
        assertThat(read.dataset()).isEqualTo(run.dataset());
        assertThat(AnalysisJson.bytes(read)).isEqualTo(AnalysisJson.bytes(run));
    }

    @Test
    void readsBackADeclinedAnalysis() throws Exception {
        AnalysisRun run = DrawnRuns.declined();

        assertThat(AnalysisJson.read(AnalysisJson.bytes(run)).analysis()).isEqualTo(run.analysis());
    }

    @Test
    void refusesOtherJson() {
        assertThatThrownBy(() -> AnalysisJson.read("{\"a\": 1}".getBytes(StandardCharsets.UTF_8)))
                .hasMessageContaining("not an analysis");
    }

    /** {@code Map.of} has another order in every JVM: a plugin's facts would have other bytes on a server than at home. */
    @Test
    void tellsFactsAndParametersInTheOrderOfTheirNamesAtAnyDepth() {
        Map<String, Object> inner = Map.of("d", 1, "b", 2, "c", 3, "a", 4);
        Map<String, Object> facts = Map.of("h", 1, "c", List.of(inner), "a", 1, "f", inner, "b", 1, "g", 1, "e", 1);
        Analysis.Estimated drawn =
                (Analysis.Estimated) DrawnRuns.withRooms(2, true).analysis();

        String json = text(facts, drawn, Map.of("zeta", "1", "beta", "2", "shot", "3", "alpha", "4"));

        String rows = "\"a\" : 4, \"b\" : 2, \"c\" : 3, \"d\" : 1";
        assertThat(json)
                .contains(
                        "\"parameters\" : { \"alpha\" : \"4\", \"beta\" : \"2\", \"shot\" : \"3\", \"zeta\" : \"1\" }");
        assertThat(json)
                .contains("\"fit\" : { \"a\" : 1, \"b\" : 1, \"c\" : [ { " + rows + " } ], \"e\" : 1, \"f\" : { " + rows
                        + " }, \"g\" : 1, \"h\" : 1 }");
    }

    private static String text(Map<String, Object> facts, Analysis.Estimated drawn, Map<String, String> parameters) {
        AnalysisRun run = new AnalysisRun(
                DrawnRuns.withRooms(2, true).info(),
                DrawnRuns.withRooms(2, true).dataset(),
                new Analysis.Estimated(
                        drawn.sentence(),
                        parameters,
                        facts,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of()));
        return new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    }

    private static AnalysisRun answered() {
        AnalysisRun drawn = DrawnRuns.withRooms(2, true);
        Analysis.Estimated answer = (Analysis.Estimated) drawn.analysis();
        return new AnalysisRun(
                drawn.info(),
                drawn.dataset(),
                new Analysis.Estimated(
                        answer.sentence(),
                        answer.parameters(),
                        Map.of("method", "REML", "criterion", 4247.77, "converged", true, "evaluations", 38),
                        List.of(
                                new Analysis.Estimate("humidity", -0.8, 0.03, 11.2, -0.87, -0.73, "deg", "slope"),
                                new Analysis.Estimate("temperature", null, null, null, null, null, "deg", "dropped")),
                        List.of(
                                new Analysis.VarianceComponent(
                                        "residual", OptionalDouble.of(2.0), OptionalDouble.empty(), Optional.empty()),
                                new Analysis.VarianceComponent(
                                        "room.correlation",
                                        OptionalDouble.empty(),
                                        OptionalDouble.empty(),
                                        Optional.of("undefined"))),
                        List.of(new Analysis.CurvePoint(30, 31.6, 31.1, 32.1, 28.9, 34.3)),
                        List.of(new Analysis.RoomEffects(
                                "a/b", 5, 100, List.of(new Analysis.Effect("intercept", 0.4, 0.2)))),
                        answer.plots(),
                        List.of("careful"),
                        List.of("Laird1982")));
    }
}
