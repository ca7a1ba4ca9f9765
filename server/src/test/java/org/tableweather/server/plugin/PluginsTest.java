package org.tableweather.server.plugin;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.server.datafolder.DataFolder;

/** What is loaded from the plugin folder, and what the log says about the rest. */
class PluginsTest {
    private final List<String> errors = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final Handler listener = new Listener();

    @TempDir
    Path root;

    private DataFolder data;
    private Path folder;

    @BeforeEach
    void makeTheFolder() throws Exception {
        data = DataFolder.at(root.resolve("data"));
        folder = Files.createDirectory(data.plugins());
        logger().addHandler(listener);
    }

    @AfterEach
    void stopListening() {
        logger().removeHandler(listener);
    }

    private static Logger logger() {
        return Logger.getLogger(Plugins.class.getName());
    }

    private List<String> loaded(String... taken) {
        return new Plugins(data, Optional.empty(), 60, 64)
                .beside(Set.of(taken)).stream()
                        .map((Analyzer<?> analyzer) -> analyzer.info().id())
                        .toList();
    }

    private Path jar(String id) throws Exception {
        return OutsideJar.of(id, OutsideJar.COUNT, OutsideJar.TELL).writeTo(folder.resolve(id + ".jar"));
    }

    @Test
    void loadsWhatIsPinned() throws Exception {
        OutsideJar.pin(jar("one"));
        OutsideJar.pin(OutsideJar.example().writeTo(folder.resolve("cushion.jar")));

        assertThat(loaded("rebound-humidity")).containsExactly("speed-kept", "one");
        assertThat(errors).isEmpty();
        assertThat(warnings).isEmpty();
    }

    @Test
    void aFolderThatIsNotThereHoldsNoPlugins() {
        assertThat(new Plugins(data, Optional.of(root.resolve("none").toString()), 60, 64).beside(Set.of()))
                .isEmpty();
    }

    @Test
    void saysLoudlyThatAJarIsNotPinnedAndHowItWouldBe() throws Exception {
        Path jar = jar("one");

        assertThat(loaded()).isEmpty();
        assertThat(errors).hasSize(1);
        assertThat(errors.get(0))
                .startsWith("PLUGIN one.jar IS NOT LOADED: ")
                .contains("plugins.sha256 does not pin it. If you trust it, add the line: ");
        String line = errors.get(0).replaceFirst(".*add the line: ", "");
        Files.writeString(folder.resolve(Pins.FILE), "# trusted\n\n" + line + "\n");
        assertThat(loaded()).as("with the line that was told, for " + jar).containsExactly("one");
    }

    @Test
    void saysLoudlyThatAJarIsNotTheOneThatWasPinned() throws Exception {
        OutsideJar.pin(jar("one"));
        OutsideJar.of("one", OutsideJar.COUNT, "return answer(1);").writeTo(folder.resolve("one.jar"));

        assertThat(loaded()).isEmpty();
        assertThat(errors).hasSize(1);
        assertThat(errors.get(0))
                .matches("PLUGIN one.jar IS NOT LOADED: its SHA-256 is [0-9a-f]{64}, pinned is [0-9a-f]{64}\\."
                        + " It is not the jar that was trusted");
    }

    @Test
    void aBrokenJarKeepsNoOtherFromLoading() throws Exception {
        OutsideJar.pin(Files.writeString(folder.resolve("a.jar"), "no jar"));
        OutsideJar.pin(jar("one"));
        OutsideJar.pin(OutsideJar.of("half", OutsideJar.COUNT, OutsideJar.TELL)
                .without("outside.Count")
                .writeTo(folder.resolve("half.jar")));
        Files.createDirectory(folder.resolve("folder.jar"));

        assertThat(loaded()).containsExactly("one");
        assertThat(errors)
                .containsExactly(
                        "PLUGIN a.jar IS NOT LOADED: a.jar is not a jar",
                        "PLUGIN folder.jar IS NOT LOADED: folder.jar is not a jar, but a folder",
                        "PLUGIN half.jar IS NOT LOADED: half.jar lacks the class outside.Count");
    }

    @Test
    void anIdIsTakenOnce() throws Exception {
        OutsideJar.pin(jar("one"));
        OutsideJar.pin(OutsideJar.of("one", OutsideJar.COUNT, OutsideJar.TELL).writeTo(folder.resolve("two.jar")));
        OutsideJar.pin(jar("rebound-humidity"));

        assertThat(loaded("rebound-humidity")).containsExactly("one");
        assertThat(errors)
                .containsExactly(
                        "PLUGIN rebound-humidity.jar: ITS ANALYZER rebound-humidity IS NOT LOADED: there is one of that id"
                                + " already",
                        "PLUGIN two.jar: ITS ANALYZER one IS NOT LOADED: there is one of that id already");
    }

    @Test
    void saysWhatIsWrongWithThePins() throws Exception {
        Files.writeString(folder.resolve(Pins.FILE), "abc  one.jar\n" + "0".repeat(64) + "  gone.jar\n");

        assertThat(loaded()).isEmpty();
        assertThat(errors).hasSize(1);
        assertThat(errors.get(0)).contains("plugins.sha256: line 1 is not a hash of 64 hexadecimal digits");
        assertThat(warnings).hasSize(1);
        assertThat(warnings.get(0)).startsWith("plugin gone.jar is pinned, but not in ");
    }

    private final class Listener extends Handler {
        @Override
        public void publish(LogRecord entry) {
            String text = entry.getMessage();
            if (entry.getLevel().intValue() >= Level.SEVERE.intValue()) {
                errors.add(text);
            } else if (entry.getLevel().intValue() >= Level.WARNING.intValue()) {
                warnings.add(text);
            }
        }

        @Override
        public void flush() {
            // nothing is held back
        }

        @Override
        public void close() {
            // nothing is open
        }
    }
}
