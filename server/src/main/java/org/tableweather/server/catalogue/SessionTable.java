package org.tableweather.server.catalogue;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Sessions in bulk: one statement for many rows. */
final class SessionTable {
    private static final int ROWS_PER_STATEMENT = 2000;
    private static final String INSERT = """
            INSERT INTO session (id, contribution_id, room_id, table_id, key, digest, invented, trials, started_at,
                                 ended_at, temp_min_c, temp_max_c, rh_min_pct, rh_max_pct, climate_complete,
                                 record)
            SELECT s.id, ?, t.room_id, t.id, s.key, s.digest, s.invented, s.trials, s.started_at, s.ended_at,
                   s.temp_min_c, s.temp_max_c, s.rh_min_pct, s.rh_max_pct, s.climate_complete, s.record::json
            FROM unnest(?::int[], ?::int[], ?::text[], ?::text[], ?::boolean[], ?::bigint[], ?::timestamptz[],
                        ?::timestamptz[], ?::float8[], ?::float8[], ?::float8[], ?::float8[], ?::boolean[], ?::text[])
                 AS s(id, table_id, key, digest, invented, trials, started_at, ended_at, temp_min_c, temp_max_c,
                      rh_min_pct, rh_max_pct, climate_complete, record)
            JOIN pool_table t ON t.id = s.table_id
            ORDER BY s.id
            ON CONFLICT (digest) WHERE NOT withdrawn DO NOTHING
            RETURNING id
            """;
    private static final String INSERT_SHOTS = """
            INSERT INTO session_shot (session_id, shot, kind, trials)
            SELECT * FROM unnest(?::int[], ?::text[], ?::text[], ?::bigint[])
            """;
    private static final String HOLDERS =
            "SELECT digest, contribution_id, key FROM session WHERE digest = ANY (?::text[]) AND NOT withdrawn";

    private final Connection connection;

    SessionTable(Connection connection) {
        this.connection = connection;
    }

    /**
     * A row and what it hangs on.
     *
     * @param id of the session, taken from the sequence
     * @param tableId of its table
     * @param row the rest
     */
    record Placed(int id, int tableId, SessionRow row) {}

    /**
     * Who holds a session already.
     *
     * @param contributionId which contribution
     * @param sessionKey under which key
     */
    record Holder(long contributionId, String sessionKey) {}

    /**
     * Stores sessions and their shots.
     *
     * @return those that were not stored, because an equal one is there already
     */
    List<Placed> insert(long contributionId, List<Placed> sessions) throws SQLException {
        List<Placed> refused = new ArrayList<>();
        for (int from = 0; from < sessions.size(); from += ROWS_PER_STATEMENT) {
            List<Placed> part = sessions.subList(from, Math.min(sessions.size(), from + ROWS_PER_STATEMENT));
            Set<Integer> stored = insertPart(contributionId, part);
            List<Placed> storedRows =
                    part.stream().filter(row -> stored.contains(row.id())).toList();
            part.stream().filter(row -> !stored.contains(row.id())).forEach(refused::add);
            insertShots(storedRows);
            new SessionFeatures(connection)
                    .store(storedRows.stream().map(SessionTable::features).toList());
        }
        return refused;
    }

    private Set<Integer> insertPart(long contributionId, List<Placed> part) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            int p = 1;
            insert.setLong(p++, contributionId);
            insert.setArray(p++, array("int4", part, Placed::id));
            insert.setArray(p++, array("int4", part, Placed::tableId));
            insert.setArray(p++, array("text", part, s -> s.row().entry().sessionKey()));
            insert.setArray(p++, array("text", part, s -> s.row().entry().digest()));
            insert.setArray(p++, array("bool", part, s -> s.row().entry().invented()));
            insert.setArray(p++, array("int8", part, s -> s.row().trials()));
            insert.setArray(p++, array("text", part, s -> text(s.row().startedAt())));
            insert.setArray(p++, array("text", part, s -> text(s.row().endedAt())));
            insert.setArray(
                    p++, array("float8", part, s -> finite(s.row().tempC().getMin())));
            insert.setArray(
                    p++, array("float8", part, s -> finite(s.row().tempC().getMax())));
            insert.setArray(
                    p++, array("float8", part, s -> finite(s.row().rhPct().getMin())));
            insert.setArray(
                    p++, array("float8", part, s -> finite(s.row().rhPct().getMax())));
            insert.setArray(p++, array("bool", part, s -> s.row().climateComplete()));
            insert.setArray(p, array("text", part, s -> RecordJson.write(s.row().entry())));
            Set<Integer> stored = new HashSet<>();
            try (ResultSet ids = insert.executeQuery()) {
                while (ids.next()) {
                    stored.add(ids.getInt(1));
                }
            }
            return stored;
        }
    }

    private static SessionFeatures.Row features(Placed session) {
        SessionRow row = session.row();
        return new SessionFeatures.Row(
                session.id(),
                row.entry(),
                new SessionFeatures.Air(
                        row.tempC().getMin(),
                        row.tempC().getMax(),
                        row.rhPct().getMin(),
                        row.rhPct().getMax()));
    }

    private void insertShots(List<Placed> sessions) throws SQLException {
        List<Object[]> rows = new ArrayList<>();
        for (Placed session : sessions) {
            session.row()
                    .shots()
                    .forEach((shot, trials) -> rows.add(
                            new Object[] {session.id(), shot.shot(), shot.kind().schemaName(), trials}));
        }
        try (PreparedStatement insert = connection.prepareStatement(INSERT_SHOTS)) {
            insert.setArray(1, array("int4", rows, row -> row[0]));
            insert.setArray(2, array("text", rows, row -> row[1]));
            insert.setArray(3, array("text", rows, row -> row[2]));
            insert.setArray(4, array("int8", rows, row -> row[3]));
            insert.executeUpdate();
        }
    }

    /** Who holds these digests. */
    Map<String, Holder> holders(List<String> digests) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(HOLDERS)) {
            select.setArray(1, array("text", digests, digest -> digest));
            Map<String, Holder> holders = new HashMap<>();
            try (ResultSet rows = select.executeQuery()) {
                while (rows.next()) {
                    holders.put(rows.getString(1), new Holder(rows.getLong(2), rows.getString(3)));
                }
            }
            return holders;
        }
    }

    private <T> Array array(String type, List<T> rows, Function<T, Object> column) throws SQLException {
        return connection.createArrayOf(type, rows.stream().map(column).toArray());
    }

    private static String text(Optional<Instant> time) {
        return time.map(Instant::toString).orElse(null);
    }

    /** The extremes of nothing are infinite. */
    private static Double finite(double value) {
        return Double.isFinite(value) ? value : null;
    }
}
