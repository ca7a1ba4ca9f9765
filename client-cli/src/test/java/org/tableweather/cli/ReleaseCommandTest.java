package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReleaseCommandTest {
    private static final String KICKS = "trials/kind=kick/room_group=000/part-0.parquet";

    @TempDir
    private Path directory;

    private String release;

    @BeforeEach
    void nameARelease() {
        release = directory.resolve("release-1").toString();
    }

    private Ran build(String... more) {
        return Ran.with(concat(
                new String[] {
                    "release",
                    "build",
                    "--data",
                    InventedFolders.of("elm").toString(),
                    InventedFolders.all().get(0).toString(),
                    "--number",
                    "1",
                    "--date",
                    "2026-02-01",
                    "--to",
                    release
                },
                more));
    }

    private static String[] concat(String[] first, String... second) {
        String[] all = java.util.Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, all, first.length, second.length);
        return all;
    }

    @Test
    void buildsAReleaseThatVerifies() throws Exception {
        Ran built = build();
        assertThat(built.exitCode()).as(built.err()).isEqualTo(ExitCodes.DONE);
        Ran verified = Ran.with("release", "verify", release);
        assertThat(verified.exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(verified.out()).contains("release 1, as it was released");
        JsonNode verdict = AnalyzeCommandTest.parsed(
                Ran.with("release", "verify", release, "--json").out());
        assertThat(verdict.path("sound").asBoolean()).isTrue();
        assertThat(built.out()).contains(verdict.path("manifestSha256").asText());
        assertThat(verdict.path("faults")).isEmpty();
    }

    @Test
    void namesTheFileOfWhichOneByteWasChanged() throws Exception {
        build();
        Path file = Path.of(release, KICKS);
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);

        Ran verified = Ran.with("release", "verify", release);

        assertThat(verified.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(verified.out()).contains("NOT as it was released").contains("changed  " + KICKS);
        assertThat(verified.err()).contains("fetch the release again");
    }

    @Test
    void refusesAManifestOtherThanExpected() {
        build();
        Ran verified = Ran.with("release", "verify", release, "--expect", "sha256:" + "0".repeat(64));
        assertThat(verified.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(verified.err()).contains("not the expected");
    }

    @Test
    void saysWhenThereIsNoRelease() {
        assertThat(Ran.with("release", "verify", release).err()).contains("there is no folder " + release);
        Ran contribution =
                Ran.with("release", "verify", InventedFolders.of("elm").toString());
        assertThat(contribution.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(contribution.err()).contains("holds no manifest.json");
    }

    @Test
    void neverChangesARelease() {
        build();
        Ran again = build();
        assertThat(again.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(again.err()).contains("is there already");
    }

    @Test
    void carriesTombstonesFromReleaseToRelease() throws Exception {
        JsonNode first = AnalyzeCommandTest.parsed(build("--json").out());
        String gone = first.at("/contributions/0/id").asText();
        String second = directory.resolve("release-2").toString();
        String left = first.at("/contributions/0/title").asText().toLowerCase().contains("elm")
                ? InventedFolders.all().get(0).toString()
                : InventedFolders.of("elm").toString();
        Ran built = Ran.with(
                "release",
                "build",
                "--data",
                left,
                "--number",
                "2",
                "--date",
                "2026-03-01",
                "--previous",
                release,
                "--withdrawn",
                gone + "=measured with a broken hygrometer",
                "--to",
                second);
        assertThat(built.exitCode()).as(built.err()).isEqualTo(ExitCodes.DONE);
        assertThat(Files.readString(Path.of(second, "changes.json")))
                .contains(gone)
                .contains("measured with a broken hygrometer");
        Ran unknown = Ran.with(
                "release",
                "build",
                "--data",
                left,
                "--number",
                "3",
                "--date",
                "2026-04-01",
                "--previous",
                second,
                "--withdrawn",
                "abc=typed wrongly",
                "--to",
                directory.resolve("release-3").toString());
        assertThat(unknown.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(unknown.err()).contains("--withdrawn abc");
    }

    @Test
    void tellsWhatTheChecksRefuse() throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString(), "--sessions", "1");
        Path trials = folder.resolve("trials.csv");
        Files.writeString(trials, Files.readString(trials).replaceFirst("kick-3-rail", "no-such-shot"));
        Ran ran = Ran.with(
                "release",
                "build",
                "--data",
                folder.toString(),
                "--number",
                "1",
                "--date",
                "2026-02-01",
                "--to",
                release);
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.err()).contains("no-such-shot").contains("remedy: ");
        assertThat(Path.of(release)).doesNotExist();
    }

    @Test
    void takesADateAndANumberThatCanBe() {
        Ran yesterday = Ran.with(
                "release",
                "build",
                "--data",
                InventedFolders.of("elm").toString(),
                "--number",
                "1",
                "--date",
                "yesterday",
                "--to",
                release);
        assertThat(yesterday.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(yesterday.err()).contains("yesterday");
        Ran zero = Ran.with(
                "release",
                "build",
                "--data",
                InventedFolders.of("elm").toString(),
                "--number",
                "0",
                "--date",
                "2026-02-01",
                "--to",
                release);
        assertThat(zero.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(zero.err()).contains("number 0 < 1");
    }
}
