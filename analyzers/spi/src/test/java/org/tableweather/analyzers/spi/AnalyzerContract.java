package org.tableweather.analyzers.spi;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.reference.References;

/**
 * What every analyzer keeps, ours or foreign: extend it, name the analyzer and sessions that it can answer.
 *
 * @param <S> the analyzer's summary
 */
public abstract class AnalyzerContract<S> {

    private static final JsonMapper MAPPER =
            JsonMapper.builder().addModule(new Jdk8Module()).build();

    /** One session and all its trials, in canonical order. */
    public record Example(SessionRecord session, List<Trial> trials) {}

    /** The analyzer under test. */
    protected abstract Analyzer<S> analyzer();

    /** Sessions of several rooms, enough for an estimate with the standard parameters. */
    protected abstract List<Example> examples();

    @Test
    void saysWhatItIs() {
        AnalyzerInfo info = analyzer().info();

        assertThat(info.id()).matches("[a-z][a-z0-9]*(-[a-z0-9]+)*");
        assertThat(info.version()).matches("\\d+\\.\\d+\\.\\d+");
        assertThat(List.of(info.summaryVersion(), info.title(), info.question(), info.method()))
                .allSatisfy(text -> assertThat(text).isNotBlank());
        assertThat(info.assumptions()).isNotEmpty();
        assertThat(info.declines()).isNotEmpty();
        assertThat(info.parameters()).allSatisfy(parameter -> {
            assertThat(parameter.name()).matches("[a-z][a-z0-9_]*");
            assertThat(parameter.meaning()).isNotBlank();
        });
    }

    @Test
    void citesKnownSources() {
        List<String> keys = new ArrayList<>(analyzer().info().references());
        keys.addAll(
                conclude(summaries(examples())).fold(Analysis.Estimated::references, Analysis.Declined::references));

        assertThat(keys)
                .isNotEmpty()
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }

    @Test
    void estimatesFromTheExamples() {
        assertThat(conclude(summaries(examples()))).isInstanceOf(Analysis.Estimated.class);
    }

    @Test
    void declinesAnEmptyInput() {
        assertThat(conclude(List.of())).isInstanceOf(Analysis.Declined.class);
    }

    @Test
    void declinesSessionsWithoutTrials() {
        List<Example> empty = examples().stream()
                .map(example -> new Example(example.session(), List.of()))
                .toList();

        assertThat(conclude(summaries(empty))).isInstanceOf(Analysis.Declined.class);
    }

    @Test
    void repeatsItselfBitForBit() throws IOException {
        assertThat(json(conclude(summaries(examples())))).isEqualTo(json(conclude(summaries(examples()))));
    }

    @Test
    void ignoresTheOrderOfRows() throws IOException {
        List<Example> shuffled = new ArrayList<>();
        Random random = new Random(1);
        for (Example example : examples()) {
            List<Trial> trials = new ArrayList<>(example.trials());
            Collections.shuffle(trials, random);
            shuffled.add(new Example(example.session(), trials));
        }

        assertThat(json(conclude(summaries(shuffled)))).isEqualTo(json(conclude(summaries(examples()))));
    }

    @Test
    void readsItsSummariesBackFromJson() throws IOException {
        List<SessionSummary<S>> fresh = summaries(examples());
        List<SessionSummary<S>> stored = new ArrayList<>();
        for (SessionSummary<S> each : fresh) {
            S back = MAPPER.readValue(
                    MAPPER.writeValueAsBytes(each.summary()), analyzer().summaryType());
            stored.add(new SessionSummary<>(
                    each.roomKey(), each.sessionKey(), each.digest(), each.invented(), each.trials(), back));
        }

        assertThat(json(conclude(stored))).isEqualTo(json(conclude(fresh)));
    }

    @Test
    void returnsFiniteNumbers() throws IOException {
        assertFinite(MAPPER.readTree(json(conclude(summaries(examples())))));
    }

    // Jackson writes what is not finite as the texts NaN, Infinity and -Infinity
    private static void assertFinite(JsonNode node) {
        assertThat(node.isTextual() ? node.asText() : "").doesNotMatch("NaN|-?Infinity");
        node.forEach(AnalyzerContract::assertFinite);
    }

    private List<SessionSummary<S>> summaries(List<Example> examples) {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        for (Example example : examples) {
            SessionRecord session = example.session();
            summaries.add(new SessionSummary<>(
                    session.roomKey(),
                    session.sessionKey(),
                    session.digest(),
                    session.invented(),
                    example.trials().size(),
                    analyzer().summarise(session, example.trials())));
        }
        summaries.sort(Comparator.comparing((SessionSummary<S> summary) -> summary.roomKey())
                .thenComparing(SessionSummary::sessionKey)
                .thenComparing(SessionSummary::digest));
        return summaries;
    }

    private Analysis conclude(List<SessionSummary<S>> summaries) {
        Analyzer<S> analyzer = analyzer();
        return analyzer.conclude(new Listed<>(summaries), Parameters.of(analyzer.info(), Map.of()));
    }

    private static String json(Analysis analysis) throws IOException {
        return MAPPER.writeValueAsString(analysis);
    }

    private record Listed<S>(List<SessionSummary<S>> sessions) implements SummarySource<S> {
        @Override
        public String hash() {
            return "sha256:" + sessions.size();
        }
    }
}
