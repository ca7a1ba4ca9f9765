package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Order, hash, JSON and discovery: what every host must decide alike. */
class HostTest {

    /** Counts trials; answers with the count, declines when there is none. */
    private static final class Counting implements Analyzer<Counting.Count> {
        record Count(long trials, double third) {}

        @Override
        public AnalyzerInfo info() {
            ParameterInfo unit = new ParameterInfo("per", "what is counted", "1", "trial", List.of("trial", "session"));
            return new AnalyzerInfo(
                    "counting",
                    "1.0.0",
                    "1",
                    "Count",
                    "How many?",
                    "n",
                    List.of(),
                    List.of(),
                    List.of(unit),
                    List.of(),
                    List.of());
        }

        @Override
        public Class<Count> summaryType() {
            return Count.class;
        }

        @Override
        public Count summarise(SessionRecord session, Iterable<Trial> trials) {
            throw new AssertionError("not called here");
        }

        @Override
        public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) {
            long n = summaries.sessions().stream()
                    .mapToLong(session -> session.summary().trials())
                    .sum();
            if (n == 0) {
                return new Analysis.Declined(
                        Analysis.Reason.TOO_FEW_RECORDS, "0 trials", parameters.values(), List.of(), List.of());
            }
            Analysis.Estimate estimate =
                    new Analysis.Estimate("count", (double) n, null, null, null, null, "1", "trials");
            Analysis.VarianceComponent undefined = new Analysis.VarianceComponent(
                    "correlation", OptionalDouble.empty(), OptionalDouble.empty(), Optional.of("undefined"));
            return new Analysis.Estimated(
                    n + " trials",
                    parameters.values(),
                    Map.of(),
                    List.of(estimate),
                    List.of(undefined),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of());
        }
    }

    private static SessionSummary<Counting.Count> session(String room, String session, String digest, long trials) {
        return new SessionSummary<>(room, session, digest, false, trials, new Counting.Count(trials, 1.0 / 3));
    }

    @Nested
    class SummariesInOneOrder {

        @Test
        void theOrderOfArrivalDoesNotMatter() {
            SessionSummary<Counting.Count> first = session("a/x", "a/x/1", "11", 2);
            SessionSummary<Counting.Count> second = session("a/x", "a/x/2", "22", 3);
            SessionSummary<Counting.Count> third = session("b/x", "b/x/1", "00", 4);
            Summaries<Counting.Count> one = Summaries.of(List.of(third, first, second));
            Summaries<Counting.Count> other = Summaries.of(List.of(second, third, first));
            assertThat(one.sessions()).containsExactly(first, second, third).isEqualTo(other.sessions());
            assertThat(one.hash()).isEqualTo(other.hash());
        }

        /** FIPS 180-4: the SHA-256 of no bytes at all. */
        @Test
        void theHashOfNoSessionIsTheHashOfNothing() {
            assertThat(Summaries.of(List.<SessionSummary<Counting.Count>>of()).hash())
                    .isEqualTo("sha256:e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
        }

        @Test
        void anotherSessionGivesAnotherHash() {
            assertThat(Summaries.of(List.of(session("a", "a/1", "11", 1))).hash())
                    .isNotEqualTo(
                            Summaries.of(List.of(session("a", "a/1", "12", 1))).hash());
        }

        @Test
        void aSummaryReadsBackToTheSameBits() {
            Counting.Count count = new Counting.Count(7, 1.0 / 3);
            byte[] json = SummaryJson.write(count);
            assertThat(SummaryJson.read(json, Counting.Count.class)).isEqualTo(count);
        }
    }

    @Nested
    class Envelope {

        @Test
        void anAnswerKeepsTheOrderOfTheContract() {
            AnalysisRun run = AnalysisRun.conclude(
                    new Counting(), Summaries.of(List.of(session("a", "a/1", "11", 5))), Map.of("per", "session"));
            String json = new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8);
            assertThat(json)
                    .containsSubsequence(
                            "\"analyzer\"",
                            "\"version\"",
                            "\"outcome\" : \"estimated\"",
                            "\"sentence\"",
                            "\"dataset\"",
                            "\"trials\" : 5",
                            "\"parameters\"",
                            "\"per\" : \"session\"",
                            "\"fit\"",
                            "\"estimates\"",
                            "\"variance\"",
                            "\"curve\"",
                            "\"rooms\"",
                            "\"plots\"",
                            "\"warnings\"",
                            "\"references\"")
                    .endsWith("}\n")
                    .contains("\"standardError\" : null")
                    .doesNotContain("\"sd\"");
        }

        @Test
        void aRefusalToAnswerCarriesReasonAndDetail() {
            AnalysisRun run = AnalysisRun.conclude(new Counting(), Summaries.of(List.of()), Map.of());
            String json = new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8);
            assertThat(json)
                    .containsSubsequence(
                            "\"outcome\" : \"declined\"",
                            "\"reason\" : \"too-few-records\"",
                            "\"detail\" : \"0 trials\"")
                    .doesNotContain("estimates");
        }

        @Test
        void anUnknownParameterIsNamedWithTheKnownOnes() {
            assertThatThrownBy(() ->
                            AnalysisRun.conclude(new Counting(), Summaries.of(List.of()), Map.of("pre", "session")))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContainingAll("pre", "counting", "per");
        }

        @Test
        void aValueThatIsNotAllowedIsNamedWithTheAllowedOnes() {
            assertThatThrownBy(
                            () -> AnalysisRun.conclude(new Counting(), Summaries.of(List.of()), Map.of("per", "week")))
                    .hasMessageContainingAll("week", "trial, session");
        }
    }

    @Nested
    class Discovery {

        @Test
        void twoAnalyzersOfOneIdAreAFaultThatNamesBoth() {
            assertThatThrownBy(() -> AnalyzerCatalogue.of(List.of(new Counting(), new Counting())))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContainingAll("counting", Counting.class.getName());
        }

        @Test
        void anAnalyzerIsFoundByItsId() {
            AnalyzerCatalogue catalogue = AnalyzerCatalogue.of(List.of(new Counting()));
            assertThat(catalogue.find("counting")).isPresent();
            assertThat(catalogue.find("weighing")).isEmpty();
            assertThat(catalogue.all()).hasSize(1);
        }
    }
}
