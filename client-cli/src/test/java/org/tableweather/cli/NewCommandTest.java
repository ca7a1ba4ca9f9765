package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

class NewCommandTest {
    @TempDir
    private Path directory;

    static java.util.List<String> shots() {
        return ShotCatalogue.all().stream().map(Shot::id).toList();
    }

    @ParameterizedTest
    @MethodSource("shots")
    void makesAFolderThatPassesTheChecksForEveryShot(String shot) {
        String folder = directory.resolve("hall").toString();

        Ran made = Ran.with("new", folder, "--shot", shot, "--sessions", "2");
        Ran checked = Ran.with("check", folder);

        assertThat(made.exitCode()).as(made.err()).isEqualTo(ExitCodes.DONE);
        assertThat(checked.exitCode()).as(checked.out()).isEqualTo(ExitCodes.DONE);
        assertThat(checked.out()).contains("accepted; 10 trials in 2 sessions").contains("0 warnings");
    }

    @Test
    void marksItsExamplesSoThatTheyCannotPassForMeasured() throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString());

        assertThat(Files.readString(folder.resolve("contribution.json"))).contains("\"invented\" : true");
        assertThat(Files.readAllLines(folder.resolve("trials.csv")).stream().skip(1))
                .isNotEmpty()
                .allMatch(row -> row.endsWith("EXAMPLE: replace this row"));
        Ran sent = Ran.with("contribute", folder.toString(), "--server", "http://127.0.0.1:1");
        assertThat(sent.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(sent.err()).contains("names no contributor yet; nothing was sent");
    }

    @Test
    void explainsEveryColumnAndTheDangers() throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString(), "--room", "Cellar club");
        String readme = Files.readString(folder.resolve("README.txt"));
        String header = Files.readAllLines(folder.resolve("trials.csv")).get(0);

        for (String column : header.split(",")) {
            assertThat(readme).containsPattern("(?m)^  " + column + " +\\S");
        }
        assertThat(readme)
                .startsWith("Cellar club:")
                .contains("Never leave a heater")
                .doesNotContain("{");
    }

    @Test
    void leavesAnExistingContributionAlone() throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString(), "--sessions", "1");
        String before = Files.readString(folder.resolve("trials.csv"));

        Ran again = Ran.with("new", folder.toString(), "--sessions", "3");

        assertThat(again.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(again.err()).contains("is there already");
        assertThat(folder.resolve("trials.csv")).hasContent(before);
    }

    @Test
    void listsTheShotsForAnUnknownOne() {
        Ran ran = Ran.with("new", directory.resolve("x").toString(), "--shot", "kick-9-rail");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("there is no shot kick-9-rail").contains("kick-3-rail");
    }
}
