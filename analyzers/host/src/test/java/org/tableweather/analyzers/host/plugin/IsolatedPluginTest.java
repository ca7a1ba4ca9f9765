package org.tableweather.analyzers.host.plugin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.schema.jar.CompiledJar;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Whatever a jar does, it does to a process of its own, and its host says so in words. */
class IsolatedPluginTest {
    private static final PluginLimits GENEROUS = new PluginLimits(Duration.ofSeconds(60), 64);
    private static final PluginLimits SHORT = new PluginLimits(Duration.ofSeconds(4), 64);

    /** A session as it was read. */
    private record Read(SessionRecord session, List<Trial> trials) {}

    @TempDir
    Path root;

    private Path folder;

    @BeforeEach
    void writeAFolder() throws IOException {
        folder = ExampleFolder.sound().writeTo(root.resolve("folder"));
    }

    private List<Analyzer<?>> load(CompiledJar compiled, PluginLimits limits) throws IOException, PluginRefused {
        Path jar = compiled.writeTo(root.resolve("outside.jar"));
        return IsolatedPlugin.load(jar, PluginJar.sha256(jar), limits);
    }

    private Analyzer<?> one(CompiledJar compiled, PluginLimits limits) throws IOException, PluginRefused {
        return load(compiled, limits).get(0);
    }

    private List<Read> sessions() throws IOException {
        List<Read> sessions = new ArrayList<>();
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            TrialSink.NONE,
                            (session, trials) -> sessions.add(new Read(session, List.copyOf(trials))));
        }
        return sessions;
    }

    private <S> AnalysisRun run(Analyzer<S> analyzer, Map<String, String> set) throws IOException {
        return AnalysisRun.conclude(
                analyzer,
                LocalSummaries.read(analyzer, List.of(folder), bytes -> {}).source(),
                set);
    }

    /** Short only where the time must run out: a busy machine starts processes slowly. */
    private static PluginLimits limitsFor(String said) {
        return said.contains("took longer") ? SHORT : GENEROUS;
    }

    private Object summarise(Analyzer<?> analyzer) throws IOException {
        Read first = sessions().get(0);
        return analyzer.summarise(first.session(), first.trials());
    }

    @Test
    void sessionsAndTrialsArriveAsTheyWereSent() throws IOException {
        for (Read read : sessions()) {
            Question question = Question.summarise("counting", read.session(), read.trials());
            byte[] json = PluginJson.MAPPER.writeValueAsBytes(question);
            assertThat(PluginJson.MAPPER.readValue(json, Question.class)).isEqualTo(question);
        }
    }

    @Test
    void givesTheBytesThatTheSameJarGivesInThisProcess() throws Exception {
        Path jar = OutsideAnalyzers.sound().writeTo(root.resolve("outside.jar"));
        Analyzer<?> here = PluginJar.analyzers(jar).get(0);
        Analyzer<?> there =
                IsolatedPlugin.load(jar, PluginJar.sha256(jar), GENEROUS).get(0);

        assertThat(there.info()).isEqualTo(here.info());
        assertThat(SummaryJson.write(summarise(there))).isEqualTo(SummaryJson.write(summarise(here)));
        AnalysisRun run = run(there, Map.of("per", "é"));
        assertThat(AnalysisJson.bytes(run)).isEqualTo(AnalysisJson.bytes(run(here, Map.of("per", "é"))));
        assertThat(run.analysis().<String>fold(Analysis.Estimated::sentence, Analysis.Declined::detail))
                .isEqualTo("30 attempts, {per=é}");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    while (on) { } return null;                                  | took longer than 4 s and was ended
                    var l = new java.util.ArrayList<long[]>(); while (on) { l.add(new long[1 << 20]); } return null; | OutOfMemoryError
                    System.exit(0); return null;                                 | ended its process (exit code 0) without a reply
                    Runtime.getRuntime().halt(7); return null;                   | ended its process (exit code 7) without a reply
                    throw new Error("ouch");                                     | java.lang.Error: ouch
                    return summarise(session, trials);                           | StackOverflowError
                    return null;                                                 | returned null from summarise
                    throw new IllegalStateException() { @Override public String getMessage() { throw new Error(); } }; | threw in summarise
                    """)
    void saysWhatAHostileSummaryDid(String body, String said) throws Exception {
        Analyzer<?> analyzer = one(OutsideAnalyzers.summarising(body), limitsFor(said));

        assertThatThrownBy(() -> summarise(analyzer))
                .isInstanceOf(PluginFailure.class)
                .hasMessageContainingAll("outside.jar", said);
        // and it may be asked again
        assertThatThrownBy(() -> summarise(analyzer)).hasMessageContaining(said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    while (on) { } return null;                      | took longer than 4 s and was ended
                    System.exit(3); return null;                     | ended its process (exit code 3) without a reply
                    throw new NoSuchMethodError("gone");             | NoSuchMethodError: gone
                    return null;                                     | returned null from conclude
                    NAN                                              | not finite, in estimates[0].value = NaN
                    INFINITY                                         | not finite, in estimates[0].value = Infinity
                    """)
    void saysWhatAHostileConclusionDid(String body, String said) throws Exception {
        String code = body.equals("NAN")
                ? OutsideAnalyzers.estimate("Double.NaN")
                : body.equals("INFINITY") ? OutsideAnalyzers.estimate("1 / 0.0") : body;
        Analyzer<?> analyzer = one(OutsideAnalyzers.concluding(code), limitsFor(said));

        assertThatThrownBy(() -> run(analyzer, Map.of()))
                .isInstanceOf(PluginFailure.class)
                .hasMessageContainingAll("outside.jar", said);
    }

    @Test
    void whatItPrintsDoesNotLieBetweenTheReplies() throws Exception {
        String loud = "for (int i = 0; i < 100_000; i++) { System.out.println(\"garbage\"); System.err.println(i); } ";

        Analyzer<?> analyzer =
                one(OutsideAnalyzers.jar(loud, loud + OutsideAnalyzers.COUNT, OutsideAnalyzers.TELL), GENEROUS);

        assertThat(run(analyzer, Map.of()).analysis()).isInstanceOf(Analysis.Declined.class);
    }

    @Test
    void garbageOnTheReplyStreamItselfIsNoReply() throws Exception {
        String loud =
                "try { new java.io.FileOutputStream(java.io.FileDescriptor.out).write(\"garbage, and more\".getBytes()); }"
                        + " catch (java.io.IOException e) { } ";
        Analyzer<?> analyzer = one(OutsideAnalyzers.summarising(loud + OutsideAnalyzers.COUNT), GENEROUS);

        assertThatThrownBy(() -> summarise(analyzer))
                .isInstanceOf(PluginFailure.class)
                .hasMessageContaining("replied with something else than a reply");
    }

    @Test
    void seesNoPasswordOfItsHost() throws Exception {
        String tell =
                "return new Analysis.Declined(Analysis.Reason.DEGENERATE, \"environment \" + System.getenv().keySet(),"
                        + " parameters.values(), List.of(), List.of());";

        AnalysisRun run = run(one(OutsideAnalyzers.concluding(tell), GENEROUS), Map.of());

        assertThat(run.analysis().<String>fold(Analysis.Estimated::sentence, Analysis.Declined::detail))
                .isEqualTo("environment []");
    }

    @Test
    void aComplaintAboutAParameterComesThrough() throws Exception {
        Analyzer<?> analyzer =
                one(OutsideAnalyzers.concluding("parameters.number(\"per\"); " + OutsideAnalyzers.TELL), GENEROUS);

        assertThatThrownBy(() -> run(analyzer, Map.of("per", "many")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("parameter per = many is not a finite number");
    }

    @Test
    void aJarThatChangedAfterwardsNeverRuns() throws Exception {
        Analyzer<?> analyzer = one(OutsideAnalyzers.sound(), GENEROUS);
        OutsideAnalyzers.summarising("return new Count(1, 1);").writeTo(root.resolve("outside.jar"));

        assertThatThrownBy(() -> summarise(analyzer))
                .isInstanceOf(PluginFailure.class)
                .hasMessageContaining("outside.jar has changed since it was pinned");
    }

    @Test
    void aJarWhoseAnalyzerCannotBeMadeIsRefused() {
        assertThatThrownBy(
                        () -> load(OutsideAnalyzers.jar("System.exit(0);", "return null;", "return null;"), GENEROUS))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("ended its process");
        assertThatThrownBy(() -> load(OutsideAnalyzers.jar("while (on) { }", "return null;", "return null;"), SHORT))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("took longer than 4 s");
        assertThatThrownBy(() -> load(OutsideAnalyzers.sound().without("outside.Count"), GENEROUS))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("outside.jar lacks the class outside.Count");
    }

    @Test
    void aRunThatIsCancelledEndsItsProcess() throws Exception {
        Path alive = root.resolve("alive");
        String body = "try { java.nio.file.Files.writeString(java.nio.file.Path.of(\"" + alive
                + "\"), \"\" + ProcessHandle.current().pid()); } catch (java.io.IOException e) { }"
                + " while (on) { } return null;";
        Analyzer<?> analyzer = one(OutsideAnalyzers.summarising(body), GENEROUS);
        List<String> said = new ArrayList<>();
        Read first = sessions().get(0);
        Thread run = new Thread(() -> {
            try {
                analyzer.summarise(first.session(), first.trials());
            } catch (PluginFailure failure) {
                said.add(failure.getMessage());
            }
        });
        run.start();
        while (!Files.exists(alive) || Files.size(alive) == 0) {
            Thread.sleep(20);
        }
        run.interrupt();
        run.join();

        assertThat(said).containsExactly("outside.jar was ended: the run was cancelled");
        assertThat(ProcessHandle.of(Long.parseLong(Files.readString(alive))).filter(ProcessHandle::isAlive))
                .isEmpty();
    }

    /** A conclusion that tells of each of its parts, a fifth of a second long. */
    private static CompiledJar telling(int parts) {
        return OutsideAnalyzers.concluding(OutsideAnalyzers.TELL + """
                }
                @Override public Analysis conclude(SummarySource<Count> all, Parameters set, ConclusionListener listener) {
                    for (int part = 0; part < %1$d; part++) {
                        listener.at("parts", part, %1$d);
                        try { Thread.sleep(200); } catch (InterruptedException e) { throw new IllegalStateException(e); }
                    }
                    return conclude(all, set);
                """.formatted(parts));
    }

    @Test
    void tellsHowFarAConclusionIs() throws Exception {
        List<String> heard = Collections.synchronizedList(new ArrayList<>());
        Analyzer<?> analyzer = one(telling(3), GENEROUS);

        Analysis told = concluded(analyzer, (what, done, total) -> heard.add(what + " " + done + " of " + total));

        assertThat(heard).containsExactly("parts 0 of 3", "parts 1 of 3", "parts 2 of 3");
        assertThat(told).isEqualTo(concluded(analyzer, ConclusionListener.NONE));
    }

    @Test
    void aConclusionThatIsNotWantedAnyMoreEndsItsProcess() throws Exception {
        Analyzer<?> analyzer = one(telling(250), GENEROUS);
        long start = System.nanoTime();

        assertThatThrownBy(() -> concluded(analyzer, (what, done, total) -> {
                    if (done > 0) {
                        throw new CancellationException("enough");
                    }
                }))
                .isInstanceOf(CancellationException.class)
                .hasMessage("enough");

        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(40));
        assertThat(ProcessHandle.current().descendants().filter(ProcessHandle::isAlive))
                .isEmpty();
    }

    private <S> Analysis concluded(Analyzer<S> analyzer, ConclusionListener listener) throws IOException {
        return AnalysisRun.conclude(
                        analyzer,
                        LocalSummaries.read(analyzer, List.of(folder), bytes -> {})
                                .source(),
                        Map.of(),
                        listener)
                .analysis();
    }

    @Test
    void anAnswerIsCheckedByTheHostToo() {
        assertThatThrownBy(() -> SoundAnalysis.of("it", null)).hasMessage("it returned null from conclude");
        assertThatThrownBy(() -> SoundAnalysis.of(
                        "it", new Analysis.Declined(Analysis.Reason.DEGENERATE, " ", Map.of(), List.of(), List.of())))
                .hasMessage("it returned an answer without a word");
    }

    @Test
    void repliesAreReadBackWithTheirSummary() throws IOException {
        JsonNode summary = PluginJson.MAPPER.readTree("{\"third\":0.3333333333333333,\"n\":3}");
        byte[] json = PluginJson.MAPPER.writeValueAsBytes(Reply.summarised(summary));

        assertThat(PluginJson.MAPPER.readValue(json, Reply.class).summary()).isEqualTo(summary);
        assertThat(new SessionSummary<>("r", "s", "d", true, 3, summary).summary())
                .isSameAs(summary);
    }
}
