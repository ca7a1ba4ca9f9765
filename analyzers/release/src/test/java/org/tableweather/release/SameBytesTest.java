package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.ContributionWriter;

/** The same contributions give the same bytes; a release is never changed, and never half there. */
class SameBytesTest {
    @TempDir
    Path work;

    @Test
    void foldersInAnotherOrderAndPackedGiveTheSameBytes() throws IOException {
        InventedRelease first = InventedRelease.in(work);
        List<Path> others = new ArrayList<>(first.contributions());
        Collections.reverse(others);
        Path zip = work.resolve("packed.zip");
        ContributionWriter.pack(others.get(0), zip);
        others.set(0, zip);
        ReleaseBuilder.build(ReleaseInput.ofFolders(others), InventedRelease.facts(), work.resolve("again"));

        Map<String, byte[]> expected = InventedRelease.files(first.folder());
        Map<String, byte[]> actual = InventedRelease.files(work.resolve("again"));
        assertThat(actual.keySet()).isEqualTo(expected.keySet());
        expected.forEach((path, bytes) -> assertThat(actual.get(path)).as(path).isEqualTo(bytes));
    }

    @Test
    void sessionsOfSeveralContributionsCountOnce() throws IOException {
        Path one = InventedFolders.write(work.resolve("one"), "Otto Invented", 59.9);
        Path two = InventedFolders.write(work.resolve("two"), "Otto Invented", 59.9);
        Files.writeString(two.resolve("trials.csv"), "\n", java.nio.file.StandardOpenOption.APPEND);
        Manifest manifest = ReleaseBuilder.build(
                ReleaseInput.ofFolders(List.of(one, two)), InventedRelease.facts(), work.resolve("r"));
        assertThat(manifest.totals().sessions()).isEqualTo(InventedFolders.ROOMS * InventedFolders.SESSIONS);
        assertThat(manifest.contributions())
                .extracting(Manifest.Member::sessions)
                .containsExactlyInAnyOrder(6, 0);
    }

    @Test
    void aWithdrawnContributionLeavesATombstone() throws IOException {
        InventedRelease first = InventedRelease.in(work);
        Manifest before = ReleaseFolder.open(first.folder()).manifest();
        String gone = before.contributions().stream()
                .filter(member -> member.contributor().startsWith("Ingrid"))
                .findFirst()
                .orElseThrow()
                .id();
        Tombstone tombstone = new Tombstone(gone, LocalDate.of(2026, 3, 1), "taken back by its contributor");
        ReleaseFacts facts =
                new ReleaseFacts(2, "Invented", LocalDate.of(2026, 3, 2), Optional.of(before), List.of(tombstone));
        Manifest after = ReleaseBuilder.build(
                ReleaseInput.ofFolders(first.contributions().subList(1, 2)), facts, work.resolve("release-2"));

        assertThat(after.changes()).isEqualTo(new Manifest.ChangeCounts(0, 1, 1));
        assertThat(after.previous()).contains(new Manifest.Previous(1, LocalDate.of(2026, 2, 1), before.hash()));
        assertThat(ReleaseFolder.open(work.resolve("release-2")).tombstones()).containsExactly(tombstone);
        assertThat(Files.readString(work.resolve("release-2/changes.json")))
                .contains("\"withdrawn\"")
                .contains(gone);
        // the old release still has it
        assertThat(ReleaseVerifier.verify(first.folder()).isSound()).isTrue();
    }

    @Test
    void aFolderThatIsThereIsLeftAlone() throws IOException {
        InventedRelease first = InventedRelease.in(work);
        Map<String, byte[]> before = InventedRelease.files(first.folder());
        assertThatThrownBy(() -> ReleaseBuilder.build(
                        ReleaseInput.ofFolders(first.contributions()), InventedRelease.facts(), first.folder()))
                .isInstanceOf(FileAlreadyExistsException.class);
        assertThat(InventedRelease.files(first.folder()).keySet()).isEqualTo(before.keySet());
    }

    @Test
    void refusedDataLeaveNothingBehind() throws IOException {
        Path folder = InventedFolders.write(work.resolve("one"), "Otto Invented", 59.9);
        Path trials = folder.resolve("trials.csv");
        Files.writeString(trials, Files.readString(trials).replaceFirst("kick-3-rail", "no-such-shot"));
        assertThatThrownBy(() -> ReleaseBuilder.build(
                        ReleaseInput.ofFolders(List.of(folder)), InventedRelease.facts(), work.resolve("r")))
                .isInstanceOf(DataRefused.class)
                .hasMessageContaining("tableweather check");
        try (Stream<Path> left = Files.list(work)) {
            assertThat(left).containsExactly(folder);
        }
    }

    @Test
    void numbersMustRise() throws IOException {
        Manifest before = ReleaseFolder.open(InventedRelease.in(work).folder()).manifest();
        assertThatThrownBy(
                        () -> new ReleaseFacts(1, "Invented", LocalDate.of(2026, 3, 2), Optional.of(before), List.of()))
                .hasMessageContaining("number 1 does not come after");
    }
}
