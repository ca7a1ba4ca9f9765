package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.release.VerifyReport.Problem;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.CameraMarks;

/**
 * Readings, marked points and camera marks of a release, held against what DuckDB reads of the contributed CSV files themselves.
 *
 * @source DuckDB
 */
class RecordedTablesTest {
    @TempDir
    static Path work;

    private static Path folder;
    private static Path release;
    private static Duck duck;

    @BeforeAll
    static void build() throws IOException, SQLException {
        duck = Duck.open();
        folder = RecordedFolder.write(work.resolve("recorded"), "Maja Invented");
        release = work.resolve("release");
        // its two rooms fall into two groups
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folder)), InventedRelease.facts(), 20, release);
    }

    @AfterAll
    static void close() throws SQLException {
        duck.close();
    }

    private static List<List<Object>> rows(String sql) throws SQLException {
        return duck.rows(sql);
    }

    private static String table(String name) {
        return "read_parquet('" + release + "/" + name + "/*/*.parquet', hive_partitioning = true)";
    }

    private static String file(Path csv) {
        return "read_csv('" + csv + "', header = true)";
    }

    @Test
    void columnsHaveTheirTypesUnitsAndMeanings() throws SQLException {
        assertThat(types("readings"))
                .containsEntry("read_at", "TIMESTAMP WITH TIME ZONE")
                .containsEntry("read_at_ns", "INTEGER")
                .containsEntry("temp_c", "DOUBLE")
                .containsEntry("placement", "VARCHAR")
                .containsEntry("room_group", "VARCHAR")
                .hasSize(ReadingTable.TABLE.columns().size() + 1);
        assertThat(types("contacts"))
                .containsEntry("seq", "INTEGER")
                .containsEntry("x_px", "DOUBLE")
                .containsEntry("rail", "VARCHAR")
                .hasSize(ContactTable.TABLE.columns().size() + 1);
        Map<Object, Object> metadata = rows(
                        "SELECT DISTINCT decode(key), decode(value) FROM parquet_kv_metadata('" + release
                                + "/*/*/*.parquet') WHERE file_name LIKE '%/readings/%' OR file_name LIKE '%/contacts/%'")
                .stream()
                .filter(row ->
                        ((String) row.get(0)).startsWith("unit.") || row.get(0).equals("description.point"))
                .collect(Collectors.toMap(row -> row.get(0), row -> row.get(1)));
        assertThat(metadata)
                .containsEntry("unit.temp_c", "Cel")
                .containsEntry("unit.bed_c", "Cel")
                .containsEntry("unit.rh_pct", "%")
                .containsEntry("unit.pressure_hpa", "hPa")
                .containsEntry("unit.x_dia", "{diamond}")
                .containsEntry("unit.x_px", "{pixel}")
                .containsEntry("unit.t_s", "s")
                .containsKey("description.point");
    }

    private static Map<Object, Object> types(String table) throws SQLException {
        Map<Object, Object> types = new HashMap<>();
        rows("DESCRIBE SELECT * FROM " + table(table)).forEach(row -> types.put(row.get(0), row.get(1)));
        return types;
    }

    /** One instrument serves both rooms, each of a group of its own: all of its readings stand twice, the other's not at all. */
    @Test
    void readingsAreThoseOfTheFileForEachRoom() throws SQLException {
        List<Object> expected = rows("SELECT count(*), count(temp_f), count(rh_pct), count(pressure_hpa), count(bed_f),"
                        + " count(placement), sum((temp_f - 32) / 1.8), sum(rh_pct), sum(pressure_hpa),"
                        + " sum((bed_f - 32) / 1.8), sum(epoch(time)) FROM "
                        + file(folder.resolve("climate.csv")) + " WHERE instrument = 'h1'")
                .get(0);
        assertThat(expected.get(0)).isEqualTo((long) RecordedFolder.READINGS);
        List<List<Object>> actual = rows("SELECT count(*), count(temp_c), count(rh_pct), count(pressure_hpa),"
                + " count(bed_c), count(placement), sum(temp_c), sum(rh_pct), sum(pressure_hpa), sum(bed_c),"
                + " sum(epoch(read_at)) FROM "
                + table("readings") + " GROUP BY room_group, room_key");
        assertThat(actual).hasSize(2).allSatisfy(room -> {
            for (int i = 0; i < expected.size(); i++) {
                double should = ((Number) expected.get(i)).doubleValue();
                // sums in another order; epoch() of DuckDB is a double of seconds
                assertThat(((Number) room.get(i)).doubleValue())
                        .isCloseTo(should, within(Math.abs(should) * 1e-14 + 1e-9));
            }
        });
        assertThat(rows("SELECT DISTINCT instrument FROM " + table("readings"))).containsExactly(List.of("h1"));
        assertThat(rows("SELECT read_at_ns FROM " + table("readings") + " WHERE read_at_ns IS NOT NULL"))
                .containsExactly(List.of(700), List.of(700));
    }

    @Test
    void readingsAreInTheirOrderAndEqualTimesAsInTheFile() throws SQLException {
        List<List<Object>> six = rows("SELECT rh_pct, placement FROM read_parquet('" + release
                + "/readings/room_group=*/part-0.parquet') WHERE room_key = 'maja-invented/attic'"
                + " AND read_at = TIMESTAMPTZ '2026-01-12 18:00:00+01:00'");
        assertThat(six)
                .containsExactly(
                        List.of(43.0, "room"),
                        List.of(43.5, "room"),
                        List.of(88.0, "outdoor"),
                        Arrays.asList(null, "bed"));
        for (String path : List.of("readings", "contacts")) {
            String order = path.equals("readings")
                    ? "room_key, contribution, instrument, read_at"
                    : "room_key, session_key, session_digest, try_cast(trial AS INTEGER), seq";
            String all = "SELECT * EXCLUDE (room_group) FROM " + table(path);
            for (List<Object> group : rows("SELECT DISTINCT room_group FROM " + table(path))) {
                String one = all + " WHERE room_group = '" + group.get(0) + "'";
                assertThat(rows(one)).isEqualTo(rows(one + " ORDER BY " + order));
            }
        }
    }

    @Test
    void readingsFindTheirSessions() throws SQLException {
        List<List<Object>> joined =
                rows("SELECT s.session, count(*), avg(r.rh_pct) FROM " + table("sessions") + " s JOIN "
                        + table("readings") + " r ON r.room_key = s.room_key AND r.contribution = s.contribution"
                        + " AND r.instrument = s.instrument AND r.read_at BETWEEN s.first_trial_at AND s.last_trial_at"
                        + " GROUP BY 1 ORDER BY 1");
        // trials from minute 1 to minute 12 of 18:00 and of 19:00
        List<List<Object>> expected = rows("SELECT 's' || (hour - 17), count(*), avg(rh_pct) FROM (SELECT *,"
                + " CAST(regexp_extract(text, 'T(\\d\\d)', 1) AS INTEGER) AS hour,"
                + " CAST(regexp_extract(text, ':(\\d\\d):', 1) AS INTEGER) AS minute FROM (SELECT *, time AS text FROM"
                + " read_csv('" + folder.resolve("climate.csv")
                + "', header = true, types = {'time': 'VARCHAR'}))) WHERE instrument = 'h1' AND hour IN (18, 19)"
                + " AND minute BETWEEN 1 AND 12 GROUP BY 1 ORDER BY 1");
        assertThat(joined).hasSize(2);
        for (int i = 0; i < 2; i++) {
            assertThat(joined.get(i).subList(0, 2)).isEqualTo(expected.get(i).subList(0, 2));
            assertThat((Double) joined.get(i).get(2))
                    .isCloseTo((Double) expected.get(i).get(2), within(1e-12));
        }
    }

    @Test
    void markedPointsAreThoseOfTheFile() throws SQLException {
        String columns = "trial, seq, point, rail, x_dia, y_dia, x_m, y_m, x_px, y_px, camera, t_s";
        List<List<Object>> expected = rows("SELECT session, " + columns + " FROM read_csv('"
                + folder.resolve("contacts.csv")
                + "', header = true, types = {'trial': 'VARCHAR', 'seq': 'INTEGER'}) ORDER BY ALL");
        assertThat(expected).hasSize(RecordedFolder.CONTACTS);
        assertThat(rows("SELECT split_part(session_key, '/', 3), " + columns + " FROM " + table("contacts")
                        + " ORDER BY ALL"))
                .isEqualTo(expected);
        assertThat(rows("SELECT count(*) FROM " + table("contacts") + " c JOIN read_parquet('" + release
                        + "/trials/*/*/*.parquet') t USING (session_digest, session_key, room_key, trial)"))
                .containsExactly(List.of((long) RecordedFolder.CONTACTS));
    }

    @Test
    void cameraMarksAreThoseOfTheContribution() throws IOException {
        Manifest manifest = ReleaseFolder.open(release).manifest();
        String path = "cameras/contributions/" + manifest.contributions().get(0).id() + ".json";
        List<CameraMarks> read = new ArrayList<>();
        for (var mark : ContributionJson.mapper()
                .readTree(release.resolve(path).toFile())
                .path("marks")) {
            read.add(ContributionJson.mapper().treeToValue(mark, CameraMarks.class));
        }
        assertThat(read).singleElement().satisfies(camera -> {
            assertThat(camera.camera()).isEqualTo("cam1");
            assertThat(camera.errorPx()).hasValue(1.5);
            assertThat(camera.points()).hasSize(4).contains(new CameraMarks.SeenPoint(8, 4, 1370, 65));
        });
    }

    @Test
    void aReleaseWithoutReadingsHasNoSuchFiles() throws IOException {
        Path bare = InventedRelease.in(work.resolve("bare")).folder();
        assertThat(InventedRelease.files(bare).keySet())
                .noneMatch(
                        path -> path.startsWith("readings") || path.startsWith("contacts") || path.startsWith("cam"));
        assertThat(Files.readString(bare.resolve("README.md"))).doesNotContain("readings/", "contacts/", "cameras/");
        assertThat(Files.readString(release.resolve("README.md")))
                .contains("readings/room_group=*", "contacts/room_group=*", "cameras/", "| `bed_c` |", "| `x_px` |");
    }

    @Test
    void theSameBytesFromAnArchiveAndAnotherOrder() throws IOException {
        Path other = InventedFolders.write(work.resolve("beside"), "Otto Invented", 59.9);
        Path zip = work.resolve("recorded.zip");
        ContributionWriter.pack(folder, zip);
        Path one = work.resolve("one");
        Path two = work.resolve("two");
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folder, other)), InventedRelease.facts(), 20, one);
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(other, zip)), InventedRelease.facts(), 20, two);
        Map<String, byte[]> expected = InventedRelease.files(one);
        assertThat(expected.keySet()).anyMatch(path -> path.startsWith("contacts/"));
        Map<String, byte[]> actual = InventedRelease.files(two);
        assertThat(actual.keySet()).isEqualTo(expected.keySet());
        expected.forEach((path, bytes) -> assertThat(actual.get(path)).as(path).isEqualTo(bytes));
    }

    /** Of equal sessions that came with two contributions, what was recorded is taken from the one that is kept. */
    @Test
    void sessionsThatCameTwiceBringTheirRecordsOnce() throws IOException, SQLException {
        Path again = RecordedFolder.write(work.resolve("again"), "Maja Invented");
        Files.writeString(again.resolve("trials.csv"), "\n", StandardOpenOption.APPEND);
        Path both = work.resolve("both");
        Manifest manifest =
                ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(again, folder)), InventedRelease.facts(), both);
        String kept = manifest.contributions().stream()
                .filter(member -> member.sessions() > 0)
                .map(Manifest.Member::id)
                .collect(Collectors.joining(" "));
        assertThat(rows("SELECT contribution, count(*) FROM read_parquet('" + both
                        + "/readings/*/*.parquet') GROUP BY 1"))
                .containsExactly(List.of(kept, 2L * RecordedFolder.READINGS));
        assertThat(rows("SELECT count(*) FROM read_parquet('" + both + "/contacts/*/*.parquet')"))
                .containsExactly(List.of((long) RecordedFolder.CONTACTS));
    }

    @Test
    void whatIsWithdrawnLeavesTheNextRelease() throws IOException {
        Path other = RecordedFolder.write(work.resolve("nils"), "Nils Invented");
        Manifest before = ReleaseBuilder.build(
                ReleaseInput.ofFolders(List.of(folder, other)), InventedRelease.facts(), work.resolve("before"));
        String gone = Sha256.hex(pack(other));
        ReleaseFacts facts = new ReleaseFacts(
                2,
                "Invented",
                LocalDate.of(2026, 3, 2),
                Optional.of(before),
                List.of(new Tombstone(gone, LocalDate.of(2026, 3, 1), "a wrong clock")));
        Manifest after = ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folder)), facts, work.resolve("after"));
        assertThat(recorded(before)).isEqualTo(2 * recorded(after));
        assertThat(before.files()).extracting(Manifest.FileEntry::path).anyMatch(path -> path.contains(gone));
        assertThat(after.files()).extracting(Manifest.FileEntry::path).noneMatch(path -> path.contains(gone));
        assertThat(ReleaseVerifier.verify(work.resolve("before")).faults()).isEmpty();
    }

    private static Path pack(Path contribution) throws IOException {
        Path zip = work.resolve("packed.zip");
        ContributionWriter.pack(contribution, zip);
        return zip;
    }

    private static long recorded(Manifest manifest) {
        return manifest.files().stream()
                .filter(file -> file.isIn(RecordedTables.READINGS) || file.isIn(RecordedTables.CONTACTS))
                .mapToLong(file -> file.rows().orElseThrow())
                .sum();
    }

    @Test
    void everyChangedByteIsNamed() throws IOException {
        List<String> paths = InventedRelease.files(release).keySet().stream()
                .filter(path -> path.matches("(readings|contacts|cameras)/.*"))
                .toList();
        assertThat(paths).hasSize(5);
        for (String path : paths) {
            Path place = release.resolve(path);
            byte[] bytes = Files.readAllBytes(place);
            byte[] changed = bytes.clone();
            changed[bytes.length / 2] ^= 1;
            Files.write(place, changed);
            assertThat(ReleaseVerifier.verify(release).faults())
                    .extracting(VerifyReport.Fault::path)
                    .containsExactly(path);
            Files.write(place, bytes);
        }
        assertThat(ReleaseVerifier.verify(release).faults()).isEmpty();
    }

    /** Whoever changes the manifest with a table is found out by what does not fit. */
    @Test
    void rowsThatDoNotFitAreNamed() throws IOException {
        Path honest = work.resolve("honest");
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(folder)), InventedRelease.facts(), honest);
        Path stranger = work.resolve("stranger");
        Path strange = RecordedFolder.write(work.resolve("strange"), "Nils Invented");
        ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(strange)), InventedRelease.facts(), stranger);
        for (String table : List.of("readings", "contacts")) {
            String path = table + "/room_group=000/part-0.parquet";
            byte[] own = Files.readAllBytes(honest.resolve(path));
            byte[] manifest = Files.readAllBytes(honest.resolve(Manifest.FILE));
            byte[] other = Files.readAllBytes(stranger.resolve(path));
            forge(honest, path, other, "");
            assertFault(honest, path, "no session");
            forge(honest, path, own, "\"rows\" : 7");
            assertFault(honest, path, "instead of 7");
            Files.write(honest.resolve(Manifest.FILE), manifest);
        }
    }

    private static void assertFault(Path folder, String path, String words) throws IOException {
        assertThat(ReleaseVerifier.verify(folder).faults()).singleElement().satisfies(fault -> {
            assertThat(fault.path()).isEqualTo(path);
            assertThat(fault.problem()).isEqualTo(Problem.ROWS);
            assertThat(fault.detail()).contains(words);
        });
    }

    /** Puts other bytes under a path, and their hash and length into the manifest. */
    private static void forge(Path folder, String path, byte[] bytes, String rows) throws IOException {
        Manifest.FileEntry was = ReleaseFolder.open(folder).manifest().files().stream()
                .filter(file -> file.path().equals(path))
                .findFirst()
                .orElseThrow();
        Files.write(folder.resolve(path), bytes);
        String text = Files.readString(folder.resolve(Manifest.FILE));
        int at = text.indexOf("\"path\" : \"" + path);
        int end = text.indexOf('}', at);
        String entry = text.substring(at, end)
                .replace(was.sha256(), Sha256.hex(bytes))
                .replace("\"bytes\" : " + was.bytes(), "\"bytes\" : " + bytes.length);
        String counted = rows.isEmpty() ? entry : entry.replaceFirst("\"rows\" : [0-9]+", rows);
        byte[] manifest = (text.substring(0, at) + counted + text.substring(end)).getBytes(StandardCharsets.UTF_8);
        Files.write(folder.resolve(Manifest.FILE), manifest);
        Files.writeString(folder.resolve(Manifest.HASH_FILE), Sha256.hex(manifest) + "  " + Manifest.FILE + "\n");
    }

    /** The trials came, and what was recorded beside them cannot be had: nothing is released without it. */
    @Test
    void anArchiveThatIsGoneIsNoRelease() throws IOException {
        Path zip = work.resolve("gone.zip");
        ContributionWriter.pack(folder, zip);
        ReleaseInput all = ReleaseInput.ofFolders(List.of(zip));
        ReleaseInput gone = sink -> {
            all.read(sink);
            Files.delete(zip);
        };
        assertThatThrownBy(() -> ReleaseBuilder.build(gone, InventedRelease.facts(), work.resolve("none")))
                .isInstanceOf(NoSuchFileException.class)
                .hasMessageContaining("gone.zip");
        assertThat(work.resolve("none")).doesNotExist();
    }

    @Test
    void theClusterIsNotAskedToHashWhatItDoesNotRead() throws IOException {
        ReleaseFolder opened = ReleaseFolder.open(release);
        for (String group : opened.roomGroups()) {
            assertThat(GroupFiles.of(opened, group).entries())
                    .extracting(Manifest.FileEntry::path)
                    .hasSize(2)
                    .allMatch(path -> path.startsWith("trials/") || path.startsWith("sessions/"));
        }
    }
}
