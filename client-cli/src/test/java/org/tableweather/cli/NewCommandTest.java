package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.record.Kind;
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

    static java.util.List<String> shotOfEachKind() {
        return Stream.of(Kind.values())
                .map(kind -> ShotCatalogue.all().stream()
                        .filter(shot -> shot.kind() == kind)
                        .findFirst()
                        .orElseThrow()
                        .id())
                .toList();
    }

    /** What a person does with an editor: name, own figures, no example left. */
    private static void fillByHand(Path folder) throws Exception {
        Path json = folder.resolve("contribution.json");
        Files.writeString(
                json,
                Files.readString(json)
                        .replace(NewFolder.NAMELESS, "A. Example")
                        .replaceAll("(?m)^ *\"invented\" : true,\\R", "")
                        .replace("EXAMPLE: replace the times and what was done", "quiet evening")
                        .replace("2025-01-", "2026-01-"));
        Path trials = folder.resolve("trials.csv");
        Files.writeString(
                trials, Files.readString(trials).replace(ExampleRows.NOTE, "").replace("2025-01-", "2026-01-"));
        Path climate = folder.resolve("climate.csv");
        Files.writeString(
                climate,
                Files.readString(climate)
                        .replace("," + ExampleRows.PLACEMENT, ",room")
                        .replace("2025-01-", "2026-01-"));
    }

    @ParameterizedTest
    @MethodSource("shotOfEachKind")
    void makesAFolderOfEachKindThatPassesWhenFilledByHand(String shot) throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString(), "--shot", shot, "--climates", "3", "--attempts", "20");
        fillByHand(folder);

        Ran checked = Ran.with("check", folder.toString());

        assertThat(checked.exitCode()).as(checked.out()).isEqualTo(ExitCodes.DONE);
        assertThat(checked.out()).contains("accepted; 60 trials in 3 sessions").contains("0 warnings");
        for (String file : NewFolder.FILES.subList(0, 3)) {
            assertThat(Files.readString(folder.resolve(file))).doesNotContainIgnoringCase("example: replace");
        }
    }

    @Test
    void writesNothingWhenItCannotWriteAll() throws Exception {
        Path folder = Files.createDirectory(directory.resolve("hall"));
        Files.writeString(folder.resolve("README.txt"), "mine");

        Ran ran = Ran.with("new", folder.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(folder.toFile().list()).containsExactly("README.txt");
        assertThat(directory.toFile().list()).containsExactly("hall");
        assertThat(Ran.with("new", directory.resolve("x").toString(), "--attempts", "0")
                        .exitCode())
                .isEqualTo(ExitCodes.USAGE);
    }
}
