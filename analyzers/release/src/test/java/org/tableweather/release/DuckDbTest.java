package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.apache.arrow.vector.types.pojo.Field;
import org.apache.arrow.vector.types.pojo.Schema;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/**
 * A release as DuckDB reads it, a reader that shares no code with ours.
 *
 * @source DuckDB
 */
class DuckDbTest {
    @TempDir
    static Path work;

    private static InventedRelease release;
    private static Duck duck;

    @BeforeAll
    static void build() throws IOException, SQLException {
        release = InventedRelease.in(work);
        duck = Duck.open();
    }

    @AfterAll
    static void close() throws SQLException {
        duck.close();
    }

    private static List<List<Object>> rows(String sql) throws SQLException {
        return duck.rows(sql);
    }

    private static Object one(String sql) throws SQLException {
        return rows(sql).get(0).get(0);
    }

    private static String trials() {
        return "read_parquet('" + release.folder() + "/trials/*/*/*.parquet', hive_partitioning = true,"
                + " union_by_name = true)";
    }

    private static String sessions() {
        return "read_parquet('" + release.folder() + "/sessions/*/*.parquet', hive_partitioning = true)";
    }

    private static long count(Predicate<Trial> which) {
        return release.trials().stream().filter(which).count();
    }

    @Test
    void columnsHaveTheTypesThatTheReadmeStates() throws SQLException {
        Map<String, String> types = new TreeMap<>();
        rows("DESCRIBE SELECT * FROM " + trials()).forEach(row -> types.put((String) row.get(0), (String) row.get(1)));
        assertThat(types)
                .containsEntry("room_key", "VARCHAR")
                .containsEntry("session_digest", "VARCHAR")
                .containsEntry("trial", "VARCHAR")
                .containsEntry("ordinal", "INTEGER")
                .containsEntry("started_at", "TIMESTAMP WITH TIME ZONE")
                .containsEntry("final_rebound_angle_deg", "DOUBLE")
                .containsEntry("made", "BOOLEAN")
                .containsEntry("rails", "INTEGER")
                .containsEntry("climate_rh_pct", "DOUBLE")
                .containsEntry("kind", "VARCHAR")
                .containsEntry("room_group", "VARCHAR")
                .doesNotContainValue("UUID");
        assertThat(types.keySet())
                .containsAll(TrialTable.RELEASED.columns().stream()
                        .map(TableColumn::name)
                        .toList());
    }

    @Test
    void partitionColumnsTellKindAndRoomGroup() throws SQLException {
        assertThat(rows("SELECT kind, room_group, count(*) FROM " + trials() + " GROUP BY 1, 2 ORDER BY 1"))
                .containsExactly(
                        List.of("kick", "000", count(trial -> trial.kind() == Kind.KICK)),
                        List.of("rebound", "000", count(trial -> trial.kind() == Kind.REBOUND)));
        assertThat(one("SELECT count(*) FROM " + sessions() + " WHERE room_group = '000'"))
                .isEqualTo(12L);
    }

    @Test
    void emptyCellsAreNullAndNothingElseIs() throws SQLException {
        assertThat(rows("SELECT count(*), count(started_at), count(ball), count(made), count(rails),"
                        + " count(landing_offset_dia), count(note), count(run_out_m), count(started_at_ns),"
                        + " count(final_rebound_angle_u_deg) FROM "
                        + trials()))
                .containsExactly(List.of(
                        (long) release.trials().size(),
                        count(trial -> trial.startedAt().isPresent()),
                        count(trial -> !trial.ball().isEmpty()),
                        count(trial -> trial.made() != Made.NOT_STATED),
                        count(trial -> trial.rails() >= 0),
                        count(trial -> !Double.isNaN(trial.landingOffsetDia())),
                        count(trial -> !trial.note().isEmpty()),
                        0L,
                        count(trial -> trial.startedAt().isPresent()),
                        count(trial -> !Double.isNaN(trial.uncertainty().finalReboundAngleUDeg()))));
    }

    @Test
    void aggregatesAreThoseOfWhatWentIn() throws SQLException {
        Map<String, Double> mean = release.trials().stream()
                .collect(Collectors.groupingBy(
                        Trial::shot, TreeMap::new, Collectors.averagingDouble(Trial::lastReboundAngleDeg)));
        List<List<Object>> rows =
                rows("SELECT shot, avg(coalesce(final_rebound_angle_deg, rebound_angle_deg)), sum(climate_rh_pct) FROM "
                        + trials() + " GROUP BY shot ORDER BY shot");
        assertThat(rows).hasSize(mean.size());
        for (List<Object> row : rows) {
            // sums in another order: a few units in the last place of some 60 numbers near 32
            assertThat((double) row.get(1)).isCloseTo(mean.get((String) row.get(0)), within(1e-12));
        }
        assertThat((double) one("SELECT sum(climate_rh_pct) FROM " + trials()))
                .isEqualTo(release.trials().stream()
                        .mapToDouble(trial -> trial.climate().rhPct())
                        .sum());
    }

    @Test
    void timesAreTheSameInstantsToTheNanosecond() throws SQLException {
        List<Long> given = release.trials().stream()
                .flatMap(trial -> trial.startedAt().stream())
                .map(time -> time.getEpochSecond() * 1_000_000_000 + time.getNano())
                .sorted()
                .toList();
        List<Long> read = new ArrayList<>();
        rows("SELECT epoch_us(started_at) * 1000 + coalesce(started_at_ns, 0) FROM " + trials()
                        + " WHERE started_at IS NOT NULL ORDER BY 1")
                .forEach(row -> read.add(((Number) row.get(0)).longValue()));
        assertThat(read).isEqualTo(given);
    }

    @Test
    void sessionsJoinTheirTrials() throws SQLException {
        assertThat(one("SELECT count(*) FROM " + sessions() + " s JOIN (SELECT session_digest, count(*) n FROM "
                        + trials() + " GROUP BY 1) t USING (session_digest) WHERE t.n = s.trials"))
                .isEqualTo(12L);
        assertThat(rows("SELECT DISTINCT latitude_deg, cloth_fitted_on, country, digest_holds FROM " + sessions()
                        + " ORDER BY digest_holds"))
                .containsExactly(
                        List.of(59.9, java.time.LocalDate.of(2025, 3, 1), "NO", false),
                        List.of(59.9, java.time.LocalDate.of(2025, 3, 1), "NO", true));
        assertThat(one("SELECT count(*) FROM " + sessions() + " WHERE json_valid(record)"))
                .isEqualTo(12L);
    }

    @Test
    void unitsAndDescriptionsStandInTheMetadata() throws SQLException {
        Map<String, String> metadata = new TreeMap<>();
        rows("SELECT decode(key), decode(value) FROM parquet_kv_metadata('" + kicks() + "')")
                .forEach(row -> metadata.put((String) row.get(0), (String) row.get(1)));
        assertThat(metadata)
                .containsEntry("unit.approach_speed_mps", "m/s")
                .containsEntry("unit.climate_temp_c", "Cel")
                .containsEntry("unit.landing_offset_dia", "{diamond}")
                .containsEntry("description.climate_rh_pct", "relative humidity of the air that stands for this trial")
                .doesNotContainKey("unit.note");
        for (TableColumn<TrialRow> column : TrialTable.RELEASED.columns()) {
            assertThat(metadata).containsKey("description." + column.name());
        }
    }

    /** Types and units as Arrow's own library reads them back from what DuckDB hands over. */
    @Test
    void fieldsCarryTheirUnitsForReadersOfArrow() throws SQLException, IOException {
        String encoded = (String) one(
                "SELECT decode(value) FROM parquet_kv_metadata('" + kicks() + "') WHERE decode(key) = 'ARROW:schema'");
        ByteBuffer message = ByteBuffer.wrap(Base64.getDecoder().decode(encoded));
        Map<String, Field> fields = new LinkedHashMap<>();
        Schema.deserializeMessage(message).getFields().forEach(field -> fields.put(field.getName(), field));

        List<Object> columns =
                rows("SELECT name FROM parquet_schema('" + kicks() + "') WHERE type IS NOT NULL").stream()
                        .map(row -> row.get(0))
                        .toList();
        assertThat(fields.keySet())
                .containsExactlyElementsOf(
                        columns.stream().map(String.class::cast).toList());
        assertThat(fields.get("approach_speed_mps").getMetadata()).containsEntry("unit", "m/s");
        assertThat(fields.get("approach_speed_mps").getType().toString()).isEqualTo("FloatingPoint(DOUBLE)");
        assertThat(fields.get("started_at").getType().toString()).isEqualTo("Timestamp(MICROSECOND, UTC)");
        assertThat(fields.get("note").getMetadata()).containsOnlyKeys("description");
        assertThat(fields.get("note").isNullable()).isTrue();
        assertThat(fields.get("session_key").isNullable()).isFalse();
    }

    private static String kicks() {
        return release.folder() + "/trials/kind=kick/room_group=000/part-0.parquet";
    }

    @Test
    void numbersThatAreAlwaysThereAreRequiredAndValuesAreStoredSmall() throws SQLException {
        assertThat(
                        rows(
                                "SELECT name, repetition_type FROM parquet_schema('" + kicks()
                                        + "') WHERE name IN ('final_rebound_angle_deg', 'landing_offset_dia', 'climate_rh_pct') ORDER BY name"))
                .containsExactly(
                        List.of("climate_rh_pct", "REQUIRED"),
                        List.of("final_rebound_angle_deg", "REQUIRED"),
                        List.of("landing_offset_dia", "OPTIONAL"));
        assertThat(rows("SELECT DISTINCT compression FROM parquet_metadata('" + kicks() + "')"))
                .containsExactly(List.of("ZSTD"));
        assertThat(rows("SELECT DISTINCT path_in_schema, encodings FROM parquet_metadata('" + kicks()
                        + "') WHERE path_in_schema IN ('final_rebound_angle_deg', 'shot', 'started_at') ORDER BY 1"))
                .satisfiesExactly(
                        row -> assertThat((String) row.get(1)).contains("DICTIONARY"),
                        row -> assertThat((String) row.get(1)).contains("DICTIONARY"),
                        row -> assertThat((String) row.get(1)).contains("DELTA_BINARY_PACKED"));
    }

    @Test
    void sessionsAreFoundByABloomFilter() throws SQLException {
        assertThat((long) one("SELECT count(*) FROM parquet_metadata('" + release.folder()
                        + "/sessions/room_group=000/part-0.parquet') WHERE bloom_filter_offset IS NOT NULL"))
                .isEqualTo(2);
        assertThat(one("SELECT count(*) FROM " + sessions() + " WHERE session_key = 'otto-invented/r1/s11'"))
                .isEqualTo(1L);
    }
}
