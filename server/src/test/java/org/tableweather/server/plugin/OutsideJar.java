package org.tableweather.server.plugin;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HexFormat;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.jar.CompiledJar;
import org.tableweather.schema.record.Trial;

/** Jars as an operator gets them: compiled in a temporary folder against the jars of the SPI and the schema alone. */
public final class OutsideJar {
    static final String COUNT = "long n = 0; for (var trial : trials) { n++; } return new Count(n);";
    static final String TELL = "long n = 0; for (var each : summaries.sessions()) { n += each.summary().attempts(); }"
            + " return answer(n);";

    private static final Path EXAMPLE = Path.of("../analyzers/example/src/main");

    private OutsideJar() {}

    /** The example of an analyzer from outside. */
    public static CompiledJar example() throws IOException {
        return CompiledJar.against(Analyzer.class, Trial.class).module(EXAMPLE);
    }

    /** An analyzer of this id that does this. */
    static CompiledJar of(String id, String summarise, String conclude) {
        return CompiledJar.against(Analyzer.class, Trial.class)
                .service(Analyzer.class, "outside.Counting")
                .source("outside.Count", "package outside; public record Count(long attempts) {}")
                .source("outside.Counting", SOURCE.formatted(id, summarise, conclude));
    }

    /** Adds the line that trusts this jar as it is now. */
    public static void pin(Path jar) throws Exception {
        byte[] hash = java.security.MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar));
        Files.writeString(
                jar.resolveSibling(Pins.FILE),
                HexFormat.of().formatHex(hash) + "  " + jar.getFileName() + "\n",
                StandardOpenOption.CREATE,
                StandardOpenOption.APPEND);
    }

    private static final String SOURCE = """
            package outside;

            import java.util.List;
            import java.util.Map;
            import org.tableweather.analyzers.spi.*;
            import org.tableweather.schema.record.*;

            public final class Counting implements Analyzer<Count> {
                private static volatile boolean on = true;

                @Override public AnalyzerInfo info() {
                    return new AnalyzerInfo("%s", "1.0.0", "1", "Counting", "How many attempts are there?", "counts",
                            List.of("none"), List.of("never"), List.of(), List.of(), List.of("CommonPractice"));
                }

                @Override public Class<Count> summaryType() { return Count.class; }

                @Override public Count summarise(SessionRecord session, Iterable<Trial> trials) { %s }

                @Override public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) { %s }

                private static Analysis answer(double n) {
                    return new Analysis.Estimated("so many", Map.of(), Map.of(), List.of(new Analysis.Estimate(
                            "n", n, null, null, null, null, "1", "attempts")), List.of(), List.of(), List.of(), List.of(),
                            List.of(), List.of("CommonPractice"));
                }
            }
            """;
}
