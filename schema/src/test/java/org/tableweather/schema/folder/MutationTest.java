package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.check.CheckReport;

/**
 * Folders and archives with bytes changed, cut, doubled or put in: reading never ends in an exception, and what is not
 * refused is handed over whole. {@code -Dtableweather.mutations=100000} tries more than a build does.
 */
class MutationTest {
    private static final int CASES = Integer.getInteger("tableweather.mutations", 500);
    private static final List<String> FILES = List.of("contribution.json", "trials.csv", "climate.csv");
    private static final byte[] NASTY =
            ",;\t\"'\n\r\\/{}[]:-+.eE0\u00009NaN%\u00C3\u00FF".getBytes(StandardCharsets.ISO_8859_1);

    @TempDir
    Path directory;

    private static byte[] mutated(byte[] bytes, Random random) {
        byte[] result = bytes.clone();
        for (int change = 1 + random.nextInt(3); change > 0 && result.length > 0; change--) {
            int at = random.nextInt(result.length);
            int length = Math.min(random.nextInt(40), result.length - at);
            switch (random.nextInt(5)) {
                case 0 -> result[at] = NASTY[random.nextInt(NASTY.length)];
                case 1 -> result[at] ^= (byte) (1 << random.nextInt(8));
                case 2 -> result = Arrays.copyOf(result, at);
                case 3 ->
                    result = joined(Arrays.copyOf(result, at), Arrays.copyOfRange(result, at + length, result.length));
                default ->
                    result = joined(Arrays.copyOf(result, at + length), Arrays.copyOfRange(result, at, result.length));
            }
        }
        return result;
    }

    private static byte[] joined(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    private static void assertSound(Path path) throws IOException {
        TestReading reading = TestReading.of(path);
        CheckReport report = reading.report();
        if (!report.isRefused()) {
            assertThat(reading.trials).hasSize((int) report.trials());
            assertThat(reading.sessions.values().stream().mapToInt(List::size).sum())
                    .isEqualTo((int) report.trials());
        }
        assertThat(report.notListed()).isNotNegative();
    }

    @Test
    void neverEndsInAnExceptionForFolders() throws IOException {
        Path folder = ExampleFolder.sound().writeTo(directory.resolve("folder"));
        Random random = new Random(20260112);
        for (int i = 0; i < CASES; i++) {
            String file = FILES.get(random.nextInt(FILES.size()));
            byte[] original = Files.readAllBytes(folder.resolve(file));
            Files.write(folder.resolve(file), mutated(original, random));
            assertTimeoutPreemptively(Duration.ofSeconds(30), () -> assertSound(folder), "case " + i);
            Files.write(folder.resolve(file), original);
        }
    }

    @Test
    void neverEndsInAnExceptionForArchives() throws IOException {
        Path archive = directory.resolve("archive.zip");
        BrokenFolders.sound().writeTo(archive);
        byte[] original = Files.readAllBytes(archive);
        Random random = new Random(20260113);
        for (int i = 0; i < CASES; i++) {
            Files.write(archive, mutated(original, random));
            assertTimeoutPreemptively(Duration.ofSeconds(30), () -> assertSound(archive), "case " + i);
        }
    }
}
