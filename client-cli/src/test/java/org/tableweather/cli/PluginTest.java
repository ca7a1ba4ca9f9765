package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** A jar from outside, named by the user. */
class PluginTest {

    /** How many attempts there are. */
    public record Count(long attempts) {}

    /** Declines to say more than how many attempts there are. */
    public static final class Counting implements Analyzer<Count> {
        @Override
        public AnalyzerInfo info() {
            return new AnalyzerInfo(
                    "counting",
                    "1.0.0",
                    "1",
                    "Counting",
                    "How many attempts are there?",
                    "counts",
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of());
        }

        @Override
        public Class<Count> summaryType() {
            return Count.class;
        }

        @Override
        public Count summarise(SessionRecord session, Iterable<Trial> trials) {
            long attempts = 0;
            for (Trial trial : trials) {
                attempts++;
            }
            return new Count(attempts);
        }

        @Override
        public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) {
            long attempts = summaries.sessions().stream()
                    .mapToLong(session -> session.summary().attempts())
                    .sum();
            return new Analysis.Declined(
                    Analysis.Reason.NOT_APPLICABLE, attempts + " attempts", Map.of(), List.of(), List.of());
        }
    }

    @Test
    void runsAnAnalyzerFromAJarThatIsNamed(@TempDir Path directory) throws Exception {
        String jar = jar(directory).toString();

        assertThat(Ran.with("analyze", "--list", "--plugin", jar).out())
                .contains("counting 1.0.0")
                .contains("rebound-humidity");
        Ran ran = Ran.with(
                "analyze",
                "counting",
                "--plugin",
                jar,
                "--data",
                InventedFolders.of("elm").toString());
        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out()).contains("declined (not-applicable): 130 attempts");
    }

    @Test
    void namesAJarThatIsNotThere() {
        Ran ran = Ran.with("analyze", "--list", "--plugin", "no.jar");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("there is no no.jar");
    }

    private static Path jar(Path directory) throws IOException {
        Path jar = directory.resolve("counting.jar");
        try (OutputStream file = Files.newOutputStream(jar);
                JarOutputStream out = new JarOutputStream(file)) {
            out.putNextEntry(new JarEntry("META-INF/services/" + Analyzer.class.getName()));
            out.write(Counting.class.getName().getBytes(StandardCharsets.UTF_8));
            for (Class<?> type : List.of(Counting.class, Count.class)) {
                String entry = type.getName().replace('.', '/') + ".class";
                out.putNextEntry(new JarEntry(entry));
                try (InputStream in = type.getClassLoader().getResourceAsStream(entry)) {
                    in.transferTo(out);
                }
            }
        }
        return jar;
    }
}
