package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.release.VerifyReport.Fault;
import org.tableweather.release.VerifyReport.Problem;
import org.tableweather.schema.digest.Sha256;

/** Whatever is changed, missing or too much is named. */
class TamperTest {
    @TempDir
    static Path work;

    private static Path release;

    @BeforeAll
    static void build() throws IOException {
        release = InventedRelease.in(work).folder();
    }

    @Test
    void oneByteOfAnyFileIsNamed() throws IOException {
        Map<String, byte[]> files = InventedRelease.files(release);
        assertThat(files).hasSizeGreaterThan(12);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path path = release.resolve(file.getKey());
            for (int at : new int[] {0, file.getValue().length / 2, file.getValue().length - 1}) {
                byte[] changed = file.getValue().clone();
                changed[at] ^= 1;
                Files.write(path, changed);
                List<Fault> faults = ReleaseVerifier.verify(release).faults();
                assertThat(faults).as("%s byte %d", file.getKey(), at).isNotEmpty();
                assertThat(faults.get(0).path() + " " + faults.get(0).detail())
                        .as("%s byte %d", file.getKey(), at)
                        .contains(file.getKey());
            }
            Files.write(path, file.getValue());
        }
        assertThat(ReleaseVerifier.verify(release).faults()).isEmpty();
    }

    @Test
    void aMissingFileIsNamed() throws IOException {
        for (Map.Entry<String, byte[]> file : InventedRelease.files(release).entrySet()) {
            if (!file.getKey().equals(Manifest.FILE)) {
                Path path = release.resolve(file.getKey());
                Files.delete(path);
                assertThat(ReleaseVerifier.verify(release).faults())
                        .singleElement()
                        .satisfies(fault -> {
                            assertThat(fault.path()).isEqualTo(file.getKey());
                            assertThat(fault.problem()).isEqualTo(Problem.MISSING);
                        });
                Files.write(path, file.getValue());
            }
        }
    }

    @Test
    void aFileTooMuchIsNamed() throws IOException {
        Path extra = release.resolve("trials/kind=kick/room_group=000/part-1.parquet");
        Files.writeString(extra, "more");
        assertThat(ReleaseVerifier.verify(release).faults()).singleElement().satisfies(fault -> {
            assertThat(fault.path()).endsWith("part-1.parquet");
            assertThat(fault.problem()).isEqualTo(Problem.EXTRA);
        });
        Files.delete(extra);
    }

    /** Whoever changes a table and the manifest with it is found out by the digests of the sessions. */
    @Test
    void aTableThatWasWrittenAnewWithOtherNumbersIsFoundByItsSessions() throws IOException {
        Path other = work.resolve("other");
        Path folder = work.resolve("changed");
        InventedFolders.write(folder, "Otto Invented", 59.9);
        Path trials = folder.resolve("trials.csv");
        Files.writeString(trials, Files.readString(trials).replaceFirst("-0\\.25", "-0.2"));
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folder)), InventedRelease.facts(), other);
        Path honest = work.resolve("honest");
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(work.resolve("coarse"))), InventedRelease.facts(), honest);

        String table = "trials/kind=kick/room_group=000/part-0.parquet";
        byte[] forged = Files.readAllBytes(other.resolve(table));
        Manifest.FileEntry was = entry(honest, table);
        Files.write(honest.resolve(table), forged);
        byte[] manifest = Files.readString(honest.resolve(Manifest.FILE))
                .replace(was.sha256(), Sha256.hex(forged))
                .replace("\"bytes\" : " + was.bytes() + ",", "\"bytes\" : " + forged.length + ",")
                .getBytes(StandardCharsets.UTF_8);
        Files.write(honest.resolve(Manifest.FILE), manifest);
        Files.writeString(honest.resolve(Manifest.HASH_FILE), Sha256.hex(manifest) + "  " + Manifest.FILE + "\n");

        assertThat(ReleaseVerifier.verify(honest).faults())
                .isNotEmpty()
                .allSatisfy(fault -> assertThat(fault.problem()).isEqualTo(Problem.ROWS));
    }

    private static Manifest.FileEntry entry(Path release, String path) throws IOException {
        return ReleaseFolder.open(release).manifest().files().stream()
                .filter(file -> file.path().equals(path))
                .findFirst()
                .orElseThrow();
    }
}
