package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.jar.CompiledJar;
import org.tableweather.schema.record.Trial;

/** A jar from outside, named by the user: compiled here against the jars of the SPI and the schema alone. */
class PluginTest {
    private static final Path EXAMPLE = Path.of("../analyzers/example/src/main");
    private static final String COUNT = "long n = 0; for (var trial : trials) { n++; } return new Count(n);";
    private static final String TELL =
            "long n = 0; for (var each : summaries.sessions()) { n += each.summary().attempts(); }"
                    + " return new Analysis.Declined(Analysis.Reason.NOT_APPLICABLE, n + \" attempts\","
                    + " parameters.values(), List.of(), List.of());";

    @TempDir
    Path directory;

    @Test
    void runsAnAnalyzerFromAJarThatIsNamed() throws IOException {
        String jar = jar("counting", COUNT, TELL)
                .writeTo(directory.resolve("counting.jar"))
                .toString();

        assertThat(Ran.with("analyze", "--list", "--plugin", jar).out())
                .contains("counting 1.0.0")
                .contains("rebound-humidity");
        Ran ran = onElm("counting", jar);
        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out()).contains("declined (not-applicable): 160 attempts");
    }

    @Test
    void runsTheExampleOfAnAnalyzerFromOutside() throws IOException {
        String jar = CompiledJar.against(Analyzer.class, Trial.class)
                .module(EXAMPLE)
                .writeTo(directory.resolve("cushion.jar"))
                .toString();

        Ran listed = Ran.with("analyze", "speed-kept", "--explain", "--plugin", jar);
        assertThat(listed.exitCode()).as(listed.err()).isEqualTo(ExitCodes.DONE);
        assertThat(listed.out()).contains("What share of its speed does a ball keep at the first rail?");
        Ran declined = onElm("speed-kept", jar);
        assertThat(declined.exitCode()).as(declined.err()).isEqualTo(ExitCodes.DONE);
        assertThat(declined.out()).contains("declined (too-few-records): 5 sessions with both speeds < 6");

        Ran answered = Ran.with("analyze", "speed-kept", "--plugin", jar, "--data", speeds().toString());
        assertThat(answered.exitCode()).as(answered.err()).isEqualTo(ExitCodes.DONE);
        // 7 sessions, all attempts of session s from 2 m/s to 1.s m/s: the middle one keeps 1.4 / 2, between 1.1 / 2
        // and 1.7 / 2
        assertThat(answered.out()).contains("A ball keeps 0.700 of its speed at the first rail (0.550 to 0.850).");
    }

    @Test
    void namesAJarThatIsNotThere() {
        isWrongUsage(Ran.with("analyze", "--list", "--plugin", "no.jar"), "there is no no.jar");
    }

    @Test
    void namesAFileThatIsNoJar() throws IOException {
        Path text = Files.writeString(directory.resolve("notes.txt"), "not a jar");

        isWrongUsage(Ran.with("analyze", "--list", "--plugin", text.toString()), "notes.txt is not a jar");
    }

    @Test
    void namesAJarWithoutAnAnalyzer() throws IOException {
        Path jar = CompiledJar.against(Analyzer.class)
                .entry("readme.txt", "hello")
                .writeTo(directory.resolve("empty.jar"));

        isWrongUsage(Ran.with("analyze", "--list", "--plugin", jar.toString()), "empty.jar holds no analyzer");
    }

    @Test
    void namesAnIdThatIsTaken() throws IOException {
        Path jar = jar("rebound-humidity", COUNT, TELL).writeTo(directory.resolve("again.jar"));

        isWrongUsage(
                Ran.with("analyze", "--list", "--plugin", jar.toString()),
                "again.jar holds an analyzer rebound-humidity, and there is one of that id already");
        isWrongUsage(
                Ran.with("analyze", "--list", "--plugin", twin("a.jar"), "--plugin", twin("b.jar")),
                "b.jar holds an analyzer twin");
    }

    @Test
    void namesAClassThatIsMissing() throws IOException {
        Path jar = jar("counting", COUNT, TELL).without("outside.Count").writeTo(directory.resolve("half.jar"));

        isWrongUsage(
                Ran.with("analyze", "--list", "--plugin", jar.toString()), "half.jar lacks the class outside.Count");
    }

    @Test
    void saysThatItIsTheJarThatFails() throws IOException {
        isTheJarsFault("throw new Error(\"ouch\");", TELL, "threw in summarise: java.lang.Error: ouch");
        isTheJarsFault("return null;", TELL, "returned null from summarise");
        isTheJarsFault(
                COUNT, "throw new IllegalStateException(\"ouch\");", "threw in conclude: java.lang.IllegalState");
        isTheJarsFault(
                COUNT, "return conclude(summaries, parameters);", "threw in conclude: java.lang.StackOverflowError");
        isTheJarsFault(COUNT, "return null;", "returned null from conclude");
    }

    private void isTheJarsFault(String summarise, String conclude, String said) throws IOException {
        Path jar = jar("counting", summarise, conclude).writeTo(directory.resolve("bad.jar"));

        Ran ran = onElm("counting", jar.toString());

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err())
                .contains("the analyzer counting 1.0.0 of bad.jar " + said, "remedy: tell the jar's author");
    }

    private static void isWrongUsage(Ran ran, String said) {
        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains(said, "remedy: ");
    }

    private static Ran onElm(String id, String jar) {
        return Ran.with(
                "analyze",
                id,
                "--plugin",
                jar,
                "--data",
                InventedFolders.of("elm").toString());
    }

    private String twin(String name) throws IOException {
        return jar("twin", COUNT, TELL).writeTo(directory.resolve(name)).toString();
    }

    /** Seven sessions of two attempts: from 2 m/s to 1.1, 1.2, ... 1.7 m/s. */
    private Path speeds() throws IOException {
        StringBuilder sessions = new StringBuilder();
        StringBuilder trials = new StringBuilder("session,trial,kind,shot,temp_c,rh_pct,approach_angle_deg,"
                + "rebound_angle_deg,approach_speed_mps,rebound_speed_mps\n");
        for (int session = 1; session <= 7; session++) {
            sessions.append(session == 1 ? "" : ", ").append("{\"id\": \"s%d\", \"table\": \"t1\"}".formatted(session));
            for (int trial = 1; trial <= 2; trial++) {
                trials.append(
                        "s%d,%d,rebound,rebound-45-ramp,21,50,45,43,2.0,1.%d\n".formatted(session, trial, session));
            }
        }
        Path folder = Files.createDirectory(directory.resolve("speeds"));
        Files.writeString(folder.resolve("contribution.json"), """
                {"schemaVersion": "1.0", "title": "Speeds", "licence": "CC0-1.0", "invented": true,
                 "contributor": {"name": "A. Example"}, "rooms": [{"id": "cellar"}],
                 "tables": [{"id": "t1", "room": "cellar", "playingLengthMm": 2540, "playingWidthMm": 1270}],
                 "sessions": [%s]}
                """.formatted(sessions));
        Files.write(folder.resolve("trials.csv"), trials.toString().getBytes(StandardCharsets.UTF_8));
        return folder;
    }

    private static CompiledJar jar(String id, String summarise, String conclude) {
        return CompiledJar.against(Analyzer.class, Trial.class)
                .service(Analyzer.class, "outside.Counting")
                .source("outside.Count", "package outside; public record Count(long attempts) {}")
                .source("outside.Counting", SOURCE.formatted(id, summarise, conclude));
    }

    private static final String SOURCE = """
            package outside;

            import java.util.List;
            import org.tableweather.analyzers.spi.*;
            import org.tableweather.schema.record.*;

            public final class Counting implements Analyzer<Count> {
                @Override public AnalyzerInfo info() {
                    return new AnalyzerInfo("%s", "1.0.0", "1", "Counting", "How many attempts are there?", "counts",
                            List.of(), List.of(), List.of(), List.of(), List.of());
                }

                @Override public Class<Count> summaryType() { return Count.class; }

                @Override public Count summarise(SessionRecord session, Iterable<Trial> trials) { %s }

                @Override public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) { %s }
            }
            """;
}
