package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.apache.parquet.column.ParquetProperties.WriterVersion;
import org.apache.parquet.io.LocalOutputFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/** Columns hold what rows hold, bit by bit: rows are read by the reference implementation of Parquet. */
class ColumnsTest {
    private static final Set<TrialNumber> ALL = EnumSet.allOf(TrialNumber.class);

    @TempDir
    Path work;

    private ReleaseFolder release() throws IOException {
        List<Path> folders = List.of(
                InventedFolders.write(work.resolve("exact"), "Ingrid Invented", 59.9127),
                InventedFolders.write(work.resolve("coarse"), "Otto Invented", 59.9));
        ReleaseBuilder.build(ReleaseInput.ofFolders(folders), ReadBackTest.facts(), work.resolve("release"));
        return ReleaseFolder.open(work.resolve("release"));
    }

    private static void assertSame(TrialColumns columns, TrialColumns rows) {
        assertThat(columns.size()).isEqualTo(rows.size());
        for (TrialNumber number : TrialNumber.values()) {
            assertThat(Arrays.copyOf(columns.numbers(number), columns.size()))
                    .as(number.column())
                    .isEqualTo(rows.numbers(number));
        }
        for (int row = 0; row < rows.size(); row++) {
            assertThat(List.of(columns.trial(row), columns.shot(row), columns.kind(row), columns.made(row)))
                    .isEqualTo(List.of(rows.trial(row), rows.shot(row), rows.kind(row), rows.made(row)));
        }
    }

    @Test
    void sessionsOfSeveralKindsAndShotsWithGapsAreThoseOfTheRows() throws IOException {
        ReleaseFolder release = release();
        for (String group : release.roomGroups()) {
            Map<String, TrialColumns> rows = new HashMap<>();
            List<String> order = new ArrayList<>();
            release.sessions(group, (session, trials) -> {
                order.add(session.digest());
                rows.put(session.digest(), TrialColumns.of(trials, ALL));
            });
            List<String> read = new ArrayList<>();
            release.columns(group, ALL, (session, columns) -> {
                read.add(session.digest());
                assertSame(columns, rows.get(session.digest()));
            });
            assertThat(read).isEqualTo(order).isNotEmpty();
        }
    }

    @Test
    void aNumberThatWasNotAskedForIsNotThere() throws IOException {
        ReleaseFolder release = release();
        String group = release.roomGroups().get(0);
        assertThatThrownBy(() -> release.columns(
                        group,
                        Set.of(TrialNumber.LANDING_OFFSET_DIA),
                        (session, columns) -> columns.numbers(TrialNumber.HOP_HEIGHT_MM)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("hop_height_mm");
    }

    @Test
    void aRunThatIsShorterThanItsSessionIsRefusedByTheNameOfItsTable() throws IOException {
        ReleaseFolder release = release();
        String group = release.roomGroups().get(0);
        Path sessions = release.path().resolve(ReleaseFolder.sessionFile(group));
        Manifest.FileEntry file =
                release.trialFiles(group, Optional.of(Kind.KICK)).get(0);
        ColumnRun run = new ColumnRun(release.path().resolve(file.path()), Kind.KICK, "kick-3-rail", 0, 7, ALL);
        try (ColumnMerge merge = new ColumnMerge(List.of(run), ALL)) {
            assertThatThrownBy(() -> merge.read(sessions, (session, columns) -> {}))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("room_group=" + group)
                    .hasMessageContaining("verify the release");
        }
    }

    /** Small pages and row groups, of both versions; a run that begins and ends within them; finely measured numbers. */
    @ParameterizedTest
    @CsvSource({"PARQUET_1_0, 1000, 100", "PARQUET_2_0, 1000, 100", "PARQUET_2_0, 130, 7", "PARQUET_1_0, 64, 1000"})
    void pagesAndRowGroupsMayEndAnywhere(WriterVersion version, int rowsPerGroup, int rowsPerPage) throws IOException {
        List<TrialRow> rows = kicks();
        Path file = work.resolve("kicks.parquet");
        try (TableWriter<TrialRow> writer = TableWriter.open(
                TrialTable.RELEASED,
                Set.of(),
                Map.of(),
                ZstdCodec.standard(),
                new TableWriter.Layout(rowsPerGroup, rowsPerPage, version),
                new LocalOutputFile(file))) {
            for (TrialRow row : rows) {
                writer.write(row);
            }
        }
        int first = 20;
        int count = rows.size() - 2 * first;
        HeldColumns held = new HeldColumns(ALL);
        int compared = 0;
        try (ColumnRun run = new ColumnRun(file, Kind.KICK, "kick-3-rail", first, count, ALL)) {
            while (!run.digest().isEmpty()) {
                String digest = run.digest();
                held.begin(InventedFolders.TRIALS);
                run.takeSession(held);
                for (TrialRow row : rows.subList(first, first + count)) {
                    if (row.session().digest().equals(digest)) {
                        assertHolds(held, row.ordinal() - 1, row.trial());
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isEqualTo(count).isGreaterThan(150);
    }

    private static void assertHolds(TrialColumns columns, int place, Trial trial) {
        assertThat(columns.trial(place)).isEqualTo(trial.trial());
        assertThat(columns.made(place)).isEqualTo(trial.made());
        for (TrialNumber number : TrialNumber.values()) {
            assertThat(Double.valueOf(columns.numbers(number)[place]))
                    .as(number.column())
                    .isEqualTo(Double.valueOf(number.of(trial)));
        }
    }

    /** Every kick, by session, in climates of as many digits as a double has: a dictionary of them would not pay. */
    private List<TrialRow> kicks() throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        List<TrialRow> rows = new ArrayList<>();
        release().sessions((session, trials) -> {
            for (int i = 0; i < trials.size(); i++) {
                if (trials.get(i).kind() == Kind.KICK) {
                    Climate climate = new Climate(random.nextDouble(), random.nextDouble(), ClimateSource.LOG);
                    Trial trial = trials.get(i).withClimate(i % 7 == 0 ? Climate.NONE : climate);
                    rows.add(new TrialRow(session, "", trials.size(), i + 1, trial));
                }
            }
        });
        return rows;
    }
}
