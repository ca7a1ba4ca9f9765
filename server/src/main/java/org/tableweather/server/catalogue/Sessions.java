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

/** Reads published sessions. */
@ApplicationScoped
class Sessions {
    private static final String COLUMNS = """
            SELECT s.id, s.key, r.key, s.contribution_id, s.digest, s.invented, s.trials, s.started_at, s.ended_at,
                   s.temp_min_c, s.temp_max_c, s.rh_min_pct, s.rh_max_pct,
                   (SELECT json_agg(json_build_object('shot', x.shot, 'kind', x.kind, 'trials', x.trials)
                                    ORDER BY x.shot, x.kind)
                    FROM session_shot x WHERE x.session_id = s.id),
            """;
    private static final String FROM = " FROM session s JOIN room r ON r.id = s.room_id WHERE ";

    private final DataSource database;

    Sessions(DataSource database) {
        this.database = database;
    }

    /**
     * Sessions by number.
     *
     * @param after number of the last one before
     * @param limit most rows; 0 for all
     */
    List<SessionView> list(CatalogueFilter filter, long after, int limit) {
        Where where = filter.sessions().and("s.id > ?", after);
        String sql = COLUMNS + "NULL" + FROM + where.sql() + " ORDER BY s.id" + (limit > 0 ? " LIMIT " + limit : "");
        return read(sql, where);
    }

    /** One session with its entry. */
    Optional<SessionView> find(int id) {
        Where where = new Where().and("s.published AND s.id = ?", id);
        return read(COLUMNS + "s.record" + FROM + where.sql(), where).stream().findFirst();
    }

    private List<SessionView> read(String sql, Where where) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            where.set(select, 1);
            try (ResultSet row = select.executeQuery()) {
                List<SessionView> sessions = new ArrayList<>();
                while (row.next()) {
                    sessions.add(session(row));
                }
                return sessions;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the sessions cannot be read", e);
        }
    }

    private static SessionView session(ResultSet row) throws SQLException {
        return new SessionView(
                row.getInt(1),
                row.getString(2),
                row.getString(3),
                row.getLong(4),
                row.getString(5),
                row.getBoolean(6),
                row.getLong(7),
                instant(row, 8),
                instant(row, 9),
                Optional.ofNullable(row.getObject(10, Double.class)),
                Optional.ofNullable(row.getObject(11, Double.class)),
                Optional.ofNullable(row.getObject(12, Double.class)),
                Optional.ofNullable(row.getObject(13, Double.class)),
                row.getString(14),
                row.getString(15));
    }

    private static Optional<Instant> instant(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
