package org.tableweather.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.cluster.bench.InventedRelease;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.schema.jar.CompiledJar;
import org.tableweather.schema.record.Trial;

/** What executors summarise and the driver concludes is what one machine says, to the last digit. */
class ClusterAnalysisTest {
    private static final String COUNTING = """
            package outside;

            import java.util.List;
            import org.tableweather.analyzers.spi.*;
            import org.tableweather.schema.record.*;

            public final class Counting implements Analyzer<Count> {
                @Override public AnalyzerInfo info() {
                    return new AnalyzerInfo("counting", "1.2.3", "1", "Counting", "How many?", "counts", List.of("none"),
                            List.of("always"), List.of(), List.of(), List.of("CommonPractice"));
                }

                @Override public Class<Count> summaryType() { return Count.class; }

                @Override public Count summarise(SessionRecord session, Iterable<Trial> trials) { %s }

                @Override public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) {
                    double sum = 0;
                    for (var each : summaries.sessions()) { sum += each.summary().degrees(); }
                    return new Analysis.Declined(Analysis.Reason.NOT_APPLICABLE, "sum " + sum, parameters.values(),
                            List.of(), List.of());
                }
            }
            """;
    private static final String SUM = "double sum = 0;"
            + " for (Trial trial : trials) { sum += trial.finalReboundAngleDeg() / 3; } return new Count(sum);";

    @TempDir
    static Path folder;

    private static JavaSparkContext spark;
    private static ReleaseFolder release;

    @BeforeAll
    static void start() throws IOException {
        new InventedRelease(12, 4, 25, 7).write(folder.resolve("release"), 200);
        release = ReleaseFolder.open(folder.resolve("release"));
        spark = ClusterContext.open(
                "local[2]", Map.of("spark.driver.host", "127.0.0.1", "spark.driver.bindAddress", "127.0.0.1"), 1);
    }

    @AfterAll
    static void stop() {
        spark.stop();
    }

    static Stream<Analyzer<?>> analyzers() {
        return AnalyzerCatalogue.discover().all().stream();
    }

    @ParameterizedTest
    @MethodSource("analyzers")
    void everyAnalyzerSaysTheSameAsOnOneMachine(Analyzer<?> analyzer) throws IOException {
        assertThat(text(onCluster(release, analyzer, List.of()))).isEqualTo(text(onOneMachine(release, analyzer)));
    }

    @Test
    void theDataAreInManyGroupsAndHaveAnAnswer() {
        assertThat(release.roomGroups()).hasSizeGreaterThan(3);
        String json = text(onCluster(release, analyzer("rebound-humidity"), List.of()));
        assertThat(json)
                .contains(
                        "\"outcome\" : \"estimated\"",
                        "\"trials\" : 1200",
                        release.manifest().datasetHash());
    }

    @Test
    void threeTrialsAreDeclinedAsOnOneMachine() throws IOException {
        new InventedRelease(1, 1, 3, 7).write(folder.resolve("few"), 1000);
        ReleaseFolder few = ReleaseFolder.open(folder.resolve("few"));
        String json = text(onCluster(few, analyzer("rebound-humidity"), List.of()));
        assertThat(json)
                .contains("\"outcome\" : \"declined\"", "\"trials\" : 3")
                .isEqualTo(text(onOneMachine(few, analyzer("rebound-humidity"))));
    }

    @Test
    void anAnalyzerFromOutsideIsShippedToTheExecutors() throws Exception {
        Path jar = plugin("sum.jar", SUM);
        Analyzer<?> counting = PluginJar.analyzers(jar).get(0);
        String json = text(onCluster(release, counting, List.of(jar)));
        assertThat(json).contains("\"detail\" : \"sum ").isEqualTo(text(onOneMachine(release, counting)));
    }

    @Test
    void anAnalyzerThatThrowsIsNamedWithItsJar() throws Exception {
        Path jar = plugin("throws.jar", "throw new IllegalStateException(\"no cloth\");");
        Analyzer<?> throwing = PluginJar.analyzers(jar).get(0);
        assertThatThrownBy(() -> onCluster(release, throwing, List.of(jar)))
                .isInstanceOfSatisfying(
                        ClusterFailure.class,
                        failure -> assertThat(failure.exitCode()).isEqualTo(1))
                .hasMessageContainingAll("room group ", "counting 1.2.3 of throws.jar", "summarise", "no cloth");
    }

    @Test
    void oneChangedByteIsRefusedByTheNameOfItsFile() throws IOException {
        Path copy = copyOf("tampered");
        Path file = aTrialFile(copy);
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
        assertRefused(copy, copy.relativize(file).toString());
    }

    @Test
    void aMissingFileIsRefusedByItsName() throws IOException {
        Path copy = copyOf("incomplete");
        Path file = aTrialFile(copy);
        Files.delete(file);
        assertRefused(copy, copy.relativize(file).toString());
    }

    @Test
    void anotherReleaseOnTheWorkersIsRefused() throws IOException {
        ReleaseFolder seen = ReleaseFolder.open(copyOf("changing"));
        Path manifest = seen.path().resolve("manifest.json");
        Files.writeString(manifest, Files.readString(manifest) + " ");
        assertThatThrownBy(() -> onCluster(seen, analyzer("rebound-humidity"), List.of()))
                .isInstanceOf(ClusterFailure.class)
                .hasMessageContaining("is another release on a worker");
    }

    @Test
    void anUnknownParameterIsWrongUsage() {
        assertThatThrownBy(() -> new ClusterAnalysis(release, List.of(), Map.of("colour", "green"), 1)
                        .run(spark, analyzer("rebound-humidity"), said -> {}))
                .isInstanceOfSatisfying(
                        ClusterFailure.class,
                        failure -> assertThat(failure.exitCode()).isEqualTo(2))
                .hasMessageContaining("colour");
    }

    @Test
    void readThreeTimesItIsThreeTimesAsMuch() {
        AnalysisRun run = new ClusterAnalysis(release, List.of(), Map.of(), 3)
                .run(spark, analyzer("rebound-humidity"), said -> {});
        assertThat(run.dataset().trials()).isEqualTo(3 * 1200);
        assertThat(run.dataset().rooms()).isEqualTo(3 * 12);
    }

    private static void assertRefused(Path copy, String file) throws IOException {
        ReleaseFolder broken = ReleaseFolder.open(copy);
        assertThatThrownBy(() -> onCluster(broken, analyzer("rebound-humidity"), List.of()))
                .isInstanceOfSatisfying(
                        ClusterFailure.class,
                        failure -> assertThat(failure.exitCode()).isEqualTo(3))
                .hasMessageContaining(file);
    }

    private static <S> AnalysisRun onCluster(ReleaseFolder from, Analyzer<S> analyzer, List<Path> plugins) {
        return new ClusterAnalysis(from, plugins, Map.of(), 1).run(spark, analyzer, said -> {});
    }

    /** Without Spark, and without a summary's way through JSON. */
    private static <S> AnalysisRun onOneMachine(ReleaseFolder from, Analyzer<S> analyzer) throws IOException {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        from.sessions((session, trials) -> summaries.add(new SessionSummary<>(
                session.roomKey(),
                session.sessionKey(),
                session.digest(),
                session.invented(),
                trials.size(),
                analyzer.summarise(session, trials))));
        return AnalysisRun.conclude(analyzer, Summaries.of(summaries), Map.of());
    }

    private static Analyzer<?> analyzer(String id) {
        return AnalyzerCatalogue.discover().find(id).orElseThrow();
    }

    private static Path plugin(String name, String summarise) throws IOException {
        return CompiledJar.against(Analyzer.class, Trial.class)
                .service(Analyzer.class, "outside.Counting")
                .source("outside.Count", "package outside; public record Count(double degrees) {}")
                .source("outside.Counting", COUNTING.formatted(summarise))
                .writeTo(folder.resolve(name));
    }

    private static Path copyOf(String name) throws IOException {
        Path copy = folder.resolve(name);
        try (Stream<Path> paths = Files.walk(release.path())) {
            for (Path path : paths.toList()) {
                Files.copy(path, copy.resolve(release.path().relativize(path).toString()));
            }
        }
        return copy;
    }

    private static Path aTrialFile(Path from) throws IOException {
        try (Stream<Path> paths = Files.walk(from.resolve("trials"))) {
            return paths.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
        }
    }

    private static String text(AnalysisRun run) {
        return new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8);
    }
}
