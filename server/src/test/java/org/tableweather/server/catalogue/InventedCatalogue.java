package org.tableweather.server.catalogue;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.record.SessionRecord;

/**
 * Many published trials, made inside the database: rooms in three countries, ten rooms a contributor, twenty sessions a room, five shots a
 * session, climates from 25 to 75 % and from 15 to 27 °C that drift within a session by 3 % and 1 K.
 */
final class InventedCatalogue {
    private static final int SESSIONS_PER_ROOM = 20;
    private static final String ROOMS = """
            INSERT INTO room (key, account_id, name, country, climate_control)
            SELECT 'plan-' || g / 10 || '/hall-' || g, c.account_id, 'Hall', (ARRAY['NO', 'SE', 'DE'])[1 + g %% 3], '{}'
            FROM generate_series(1, %d) g, contribution c WHERE c.id = %d
            """;
    private static final String TABLES = """
            INSERT INTO pool_table (contribution_id, room_id, local_id, record)
            SELECT %d, r.id, 'plan-' || r.id, '{}' FROM room r WHERE r.key LIKE 'plan-%%'
            """;
    private static final String SESSIONS = """
            INSERT INTO session (contribution_id, room_id, table_id, key, digest, invented, published, trials, started_at, ended_at,
                                 temp_min_c, temp_max_c, rh_min_pct, rh_max_pct, climate_complete, record)
            SELECT %d, r.id, t.id, r.key || '/s' || n, 'plan-' || r.id || '-' || n, true, true, %d,
                   timestamptz '2020-01-01Z' + (r.id * 20 + n) * interval '1 hour',
                   timestamptz '2020-01-01Z' + (r.id * 20 + n) * interval '1 hour' + interval '50 minutes',
                   15 + (r.id * 7 + n * 3) %% 12, 16 + (r.id * 7 + n * 3) %% 12,
                   25 + (r.id * 13 + n * 11) %% 48, 28 + (r.id * 13 + n * 11) %% 48, true,
                   (SELECT e.record FROM session e WHERE e.contribution_id = %d ORDER BY e.id LIMIT 1)
            FROM room r JOIN pool_table t ON t.room_id = r.id, generate_series(1, %d) n
            WHERE r.key LIKE 'plan-%%' ORDER BY r.id, n
            """;
    private static final String SHOTS = """
            INSERT INTO session_shot (session_id, shot, kind, trials)
            SELECT s.id, 'shot-' || k, (ARRAY['rebound', 'bank', 'kick', 'speed', 'hop'])[k], s.trials / 5
            FROM session s, generate_series(1, 5) k WHERE s.digest LIKE 'plan-%'
            """;
    private static final String TRIALS = """
            INSERT INTO trial (session_id, ordinal, trial, started_at, kind, shot, final_rebound_angle_deg, made, rails,
                               climate_temp_c, climate_rh_pct, climate_source)
            SELECT s.id, g.n, g.n::text, s.started_at + g.n * (interval '50 minutes' / s.trials),
                   (ARRAY['rebound', 'bank', 'kick', 'speed', 'hop'])[1 + g.n %% 5], 'shot-' || 1 + g.n %% 5,
                   40 + (g.n * 7919 %% 1000) / 100.0, g.n %% 3 = 0, 3,
                   s.temp_min_c + (s.temp_max_c - s.temp_min_c) * g.n / s.trials,
                   s.rh_min_pct + (s.rh_max_pct - s.rh_min_pct) * g.n / s.trials, 'log'
            FROM session s, generate_series(1, %d) AS g(n) WHERE s.digest LIKE 'plan-%%' ORDER BY s.id, g.n
            """;
    private static final List<String> STATISTICS = List.of(
            "SELECT brin_summarize_new_values('trial_session')",
            "ANALYZE trial",
            "ANALYZE session",
            "ANALYZE session_shot",
            "ANALYZE session_measure",
            "ANALYZE room");
    private static final List<String> REMOVAL = List.of(
            "DELETE FROM trial USING session s WHERE s.id = session_id AND s.digest LIKE 'plan-%'",
            "DELETE FROM session_shot USING session s WHERE s.id = session_id AND s.digest LIKE 'plan-%'",
            "DELETE FROM session_measure USING session s WHERE s.id = session_id AND s.digest LIKE 'plan-%'",
            "DELETE FROM session WHERE digest LIKE 'plan-%'",
            "DELETE FROM pool_table WHERE local_id LIKE 'plan-%'",
            "DELETE FROM room WHERE key LIKE 'plan-%'",
            "UPDATE catalogue_state SET generation = generation + 1");

    private InventedCatalogue() {}

    /**
     * Adds the rows.
     *
     * @param contribution whose sessions they shall be; it must have one session at least
     * @param trialsPerSession a multiple of five
     */
    static void fill(Connection connection, int contribution, int trials, int trialsPerSession) throws SQLException {
        int rooms = trials / trialsPerSession / SESSIONS_PER_ROOM;
        execute(
                connection,
                List.of(
                        ROOMS.formatted(rooms, contribution),
                        TABLES.formatted(contribution),
                        SESSIONS.formatted(contribution, trialsPerSession, contribution, SESSIONS_PER_ROOM),
                        SHOTS,
                        TRIALS.formatted(trialsPerSession)));
        features(connection);
        execute(connection, STATISTICS);
    }

    /** Takes them away again. */
    static void remove(Connection connection) throws SQLException {
        execute(connection, REMOVAL);
    }

    private static void features(Connection connection) throws SQLException {
        String sql =
                "SELECT id, temp_min_c, temp_max_c, rh_min_pct, rh_max_pct, record FROM session WHERE digest LIKE 'plan-%'";
        List<SessionFeatures.Row> rows = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            SessionRecord entry = null;
            while (row.next()) {
                entry = entry == null ? RecordJson.session(row.getString(6)) : entry;
                rows.add(new SessionFeatures.Row(
                        row.getInt(1),
                        entry,
                        new SessionFeatures.Air(
                                row.getDouble(2), row.getDouble(3), row.getDouble(4), row.getDouble(5))));
            }
        }
        new SessionFeatures(connection).store(rows);
    }

    private static void execute(Connection connection, List<String> statements) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }
}
