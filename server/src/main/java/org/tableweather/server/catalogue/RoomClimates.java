package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;

/** What the published sessions of a room tell of its climate, and of what is shot there. */
@ApplicationScoped
public class RoomClimates {
    private static final String OF_ROOM =
            " FROM session s JOIN room r ON r.id = s.room_id WHERE s.published AND r.key = ?";
    private static final String ROOMS = "SELECT r.key, coalesce(r.name, r.key) FROM room r WHERE EXISTS"
            + " (SELECT FROM session s WHERE s.room_id = r.id AND s.published) ORDER BY 2, 1 LIMIT ?";
    private static final String USUAL =
            "SELECT avg((s.temp_min_c + s.temp_max_c) / 2), avg((s.rh_min_pct + s.rh_max_pct) / 2)," + " count(*)"
                    + OF_ROOM + " AND s.temp_min_c IS NOT NULL AND s.rh_min_pct IS NOT NULL";
    private static final String SHOTS = "SELECT x.shot FROM session_shot x JOIN session s ON s.id = x.session_id"
            + " JOIN room r ON r.id = s.room_id WHERE s.published AND (? = '' OR r.key = ?)"
            + " GROUP BY x.shot ORDER BY sum(x.trials) DESC, x.shot LIMIT ?";
    private static final String LATEST_SESSION = "SELECT s.id, s.key" + OF_ROOM
            + " AND s.rh_min_pct IS NOT NULL ORDER BY s.ended_at DESC NULLS LAST, s.id DESC LIMIT 1";
    private static final String LATEST_TRIAL = "SELECT t.climate_temp_c, t.climate_rh_pct, t.started_at FROM trial t"
            + " WHERE t.session_id = ? AND t.climate_temp_c IS NOT NULL AND t.climate_rh_pct IS NOT NULL"
            + " ORDER BY t.started_at DESC NULLS LAST, t.ordinal DESC LIMIT 1";

    private final DataSource database;

    RoomClimates(DataSource database) {
        this.database = database;
    }

    /**
     * A room.
     *
     * @param key its name over all contributions
     * @param name as people call it
     */
    public record Named(String key, String name) {}

    /**
     * What a room is usually at: the mean over its sessions of the middle of each session's climate.
     *
     * @param tempC °C
     * @param rhPct %
     * @param sessions how many
     */
    public record Usual(double tempC, double rhPct, long sessions) {}

    /**
     * The climate of the last attempt of a room.
     *
     * @param tempC °C
     * @param rhPct %
     * @param at when; empty when the attempt has no time
     * @param session key of its session
     */
    public record Latest(double tempC, double rhPct, Optional<Instant> at, String session) {}

    /** Works on a row. */
    @FunctionalInterface
    private interface Read<T> {
        T of(ResultSet row) throws SQLException;
    }

    /**
     * Rooms with published sessions, by name.
     *
     * @param most of them
     */
    public List<Named> rooms(int most) {
        return read(ROOMS, row -> new Named(row.getString(1), row.getString(2)), most);
    }

    /** What a room is usually at; empty when no session of it has a climate. */
    public Optional<Usual> usual(String roomKey) {
        return first(read(USUAL, row -> new Usual(row.getDouble(1), row.getDouble(2), row.getLong(3)), roomKey))
                .filter(usual -> usual.sessions() > 0);
    }

    /** The climate of the last attempt of a room; empty when none has one. */
    public Optional<Latest> latest(String roomKey) {
        return first(read(LATEST_SESSION, row -> new Named(row.getString(1), row.getString(2)), roomKey))
                .flatMap(session -> first(read(
                        LATEST_TRIAL,
                        row -> new Latest(row.getDouble(1), row.getDouble(2), instant(row, 3), session.name()),
                        Integer.parseInt(session.key()))));
    }

    /**
     * Shots of a room, those with the most attempts first.
     *
     * @param roomKey empty for all rooms
     * @param most of them
     */
    public List<String> shots(String roomKey, int most) {
        return read(SHOTS, row -> row.getString(1), roomKey, roomKey, most);
    }

    private static Optional<Instant> instant(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    private static <T> Optional<T> first(List<T> rows) {
        return rows.stream().findFirst();
    }

    private <T> List<T> read(String sql, Read<T> read, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                select.setObject(i + 1, values[i]);
            }
            List<T> rows = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    rows.add(read.of(row));
                }
            }
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException("the climates of rooms cannot be read", e);
        }
    }
}
