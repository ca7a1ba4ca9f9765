package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;

/**
 * Reads published trials: first the sessions that may hold what is asked for, a few at a time, then their trials. So a page
 * costs the same at the end of the table as at its beginning, and nothing is held in memory but one batch.
 */
@ApplicationScoped
class Trials {
    private static final int SESSIONS_AT_ONCE = 100;
    private static final String TRIALS = "SELECT t.session_id, t.ordinal, " + TrialColumn.sqlNames() + " FROM trial t";

    private final DataSource database;

    Trials(DataSource database) {
        this.database = database;
    }

    /** Takes trials; tells whether it wants more. */
    @FunctionalInterface
    interface Receiver {
        boolean accept(FoundTrial trial) throws IOException;
    }

    /**
     * Where to go on.
     *
     * @param session number of the session
     * @param ordinal of the last trial before
     */
    record Position(int session, int ordinal) {
        static final Position START = new Position(0, 0);
    }

    /** A session that may hold trials asked for. */
    private record Candidate(String room, String key, long trials, OffsetDateTime startedAt) {}

    /**
     * Reads in the order of session and ordinal.
     *
     * @param after where to go on
     * @param atOnce trials of the sessions that are looked through together
     * @param receiver takes them until it has enough
     */
    void read(CatalogueFilter filter, Position after, int atOnce, Receiver receiver) throws IOException {
        Position position = after;
        try (TrialReading reading = TrialReading.begin(database)) {
            boolean more = true;
            while (more) {
                Map<Integer, Candidate> candidates = candidates(reading, filter, position, atOnce);
                more = !candidates.isEmpty() && read(reading, filter, candidates, position, receiver);
                int last = candidates.keySet().stream()
                        .mapToInt(Integer::intValue)
                        .max()
                        .orElse(0);
                position = new Position(last + 1, 0);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the trials cannot be read", e);
        }
    }

    private static Map<Integer, Candidate> candidates(
            TrialReading reading, CatalogueFilter filter, Position from, int atOnce) throws SQLException, IOException {
        Where where = filter.sessions().and("s.id >= ?", from.session());
        String sql = "SELECT s.id, r.key, s.key, s.trials, s.started_at"
                + " FROM session s JOIN room r ON r.id = s.room_id WHERE " + where.sql() + " ORDER BY s.id LIMIT "
                + SESSIONS_AT_ONCE;
        Map<Integer, Candidate> candidates = new LinkedHashMap<>();
        long[] trials = {0};
        reading.query(sql, where, row -> {
            candidates.put(
                    row.getInt(1),
                    new Candidate(
                            row.getString(2),
                            row.getString(3),
                            row.getLong(4),
                            row.getObject(5, OffsetDateTime.class)));
            trials[0] += row.getLong(4);
            return trials[0] < atOnce;
        });
        return candidates;
    }

    private static boolean read(
            TrialReading reading,
            CatalogueFilter filter,
            Map<Integer, Candidate> candidates,
            Position after,
            Receiver receiver)
            throws SQLException, IOException {
        Integer[] inTime = candidates.entrySet().stream()
                .filter(entry -> filter.isInTime(entry.getValue().startedAt()))
                .map(Map.Entry::getKey)
                .toArray(Integer[]::new);
        Where where = filter.trials(inTime).and("(t.session_id, t.ordinal) > (?, ?)", after.session(), after.ordinal());
        return reading.rows(
                TRIALS,
                List.copyOf(candidates.keySet()),
                where,
                " ORDER BY t.session_id, t.ordinal",
                row -> receiver.accept(found(row, candidates.get(row.getInt(1)))));
    }

    private static FoundTrial found(ResultSet row, Candidate session) throws SQLException {
        List<TrialColumn> columns = TrialColumn.all();
        Map<String, Object> values = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            Object value = columns.get(i) == TrialColumn.STARTED_AT
                    ? row.getObject(3 + i, OffsetDateTime.class)
                    : row.getObject(3 + i);
            if (value != null) {
                values.put(columns.get(i).jsonName(), value instanceof OffsetDateTime time ? time.toInstant() : value);
            }
        }
        return new FoundTrial(session.room(), row.getInt(1), session.key(), row.getInt(2), values);
    }
}
