package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.SessionDigest;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What went in comes out: every session, every trial, every digit, in one order. */
class ReadBackTest {
    @TempDir
    Path work;

    private Path exact;
    private Path coarse;
    private final Map<String, List<Trial>> given = new TreeMap<>();
    private final Map<String, SessionRecord> records = new TreeMap<>();

    @BeforeEach
    void writeAndRead() throws IOException {
        exact = InventedFolders.write(work.resolve("exact"), "Ingrid Invented", 59.9127);
        coarse = InventedFolders.write(work.resolve("coarse"), "Otto Invented", 59.9);
        for (Path folder : List.of(exact, coarse)) {
            try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
                ContributionReader.create()
                        .read(
                                source,
                                ContributionReader.ContributionListener.NONE,
                                TrialSink.NONE,
                                (session, trials) -> {
                                    given.put(session.digest(), List.copyOf(trials));
                                    records.put(session.digest(), session);
                                });
            }
        }
    }

    static ReleaseFacts facts() {
        return new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
    }

    private ReleaseFolder build(String name, Path... folders) throws IOException {
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folders)), facts(), work.resolve(name));
        return ReleaseFolder.open(work.resolve(name));
    }

    @Test
    void everySessionComesBackWithAllItsTrials() throws IOException {
        ReleaseFolder release = build("one", exact, coarse);
        List<String> order = new ArrayList<>();
        for (String group : release.roomGroups()) {
            release.sessions(group, (session, trials) -> {
                order.add(session.roomKey() + " " + session.sessionKey() + " " + session.digest());
                assertThat(trials).isEqualTo(given.get(session.digest()));
                assertThat(session.session())
                        .isEqualTo(records.get(session.digest()).session());
                assertThat(session.table())
                        .isEqualTo(records.get(session.digest()).table());
            });
        }
        assertThat(order).hasSize(given.size()).isSorted();
        assertThat(release.manifest().totals())
                .isEqualTo(new Manifest.Totals(
                        2,
                        2,
                        2 * InventedFolders.ROOMS,
                        2 * InventedFolders.ROOMS * InventedFolders.SESSIONS,
                        2 * InventedFolders.ROOMS * InventedFolders.SESSIONS * InventedFolders.TRIALS));
    }

    @Test
    void theDigestComputedFromTheReadRowsIsTheStoredOneUnlessThePositionWasRounded() throws IOException {
        build("one", exact, coarse).sessions((session, trials) -> {
            boolean rounded = !records.get(session.digest()).room().equals(session.room());
            assertThat(SessionDigest.of(session, trials).equals(session.digest()))
                    .isEqualTo(!rounded);
            assertThat(session.room().latitude()).hasValue(59.9);
            assertThat(rounded).isEqualTo(session.roomKey().startsWith("ingrid"));
        });
    }

    @Test
    void aSoundReleaseVerifies() throws IOException {
        VerifyReport report = ReleaseVerifier.verify(build("one", exact, coarse).path());
        assertThat(report.faults()).isEmpty();
        assertThat(report.number()).contains(1);
    }

    @Test
    void trialsInAFileThatStandsAloneComeBackToo() throws IOException {
        Path file = work.resolve("alone.parquet");
        try (OutputStream out = Files.newOutputStream(file);
                TrialParquet.Writer writer = TrialParquet.writer(out)) {
            for (String digest : given.keySet()) {
                for (Trial trial : given.get(digest)) {
                    writer.write(records.get(digest), given.get(digest).size(), trial);
                }
            }
        }
        Map<String, List<Trial>> read = new TreeMap<>();
        TrialParquet.sessions(file, (session, trials) -> {
            assertThat(session).isEqualTo(records.get(session.digest()));
            read.put(session.digest(), trials);
        });
        assertThat(read).isEqualTo(given);
    }

    @Test
    void aPartOfASessionIsNotTakenForTheWhole() throws IOException {
        Path file = work.resolve("part.parquet");
        String digest = given.keySet().iterator().next();
        List<Trial> part = given.get(digest).subList(0, 7);
        try (OutputStream out = Files.newOutputStream(file);
                TrialParquet.Writer writer = TrialParquet.writer(out)) {
            for (Trial trial : part) {
                writer.write(records.get(digest), given.get(digest).size(), trial);
            }
        }
        TrialParquet.sessions(file, (session, trials) -> {
            assertThat(trials).isEqualTo(part);
            assertThat(session.digest()).isNotEqualTo(digest).isEqualTo(SessionDigest.of(session, trials));
        });
    }

    @Test
    void aFolderWithoutManifestIsNoRelease() {
        assertThatThrownBy(() -> ReleaseFolder.open(exact))
                .isInstanceOf(NoRelease.class)
                .hasMessageContaining("exact")
                .hasMessageContaining("manifest.json");
    }
}
