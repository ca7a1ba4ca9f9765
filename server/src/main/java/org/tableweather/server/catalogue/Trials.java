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
    private static final int FIRST = 3;
    private static final int TEMP_C = FIRST + TrialColumn.CLIMATE_TEMP_C.ordinal();
    private static final int RH_PCT = FIRST + TrialColumn.CLIMATE_RH_PCT.ordinal();
    /** Of every list of trials. */
    static final String ORDER = " ORDER BY t.session_id, t.ordinal";

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

    /** Takes the trials of a few sessions; tells whether it wants more. */
    @FunctionalInterface
    interface Batches {
        boolean accept(TrialReading reading, TrialBatch batch, Position after) throws SQLException, IOException;
    }

    /**
     * Reads in the order of session and ordinal.
     *
     * @param after where to go on
     * @param atOnce trials of the sessions that are looked through together
     * @param listening asked before each of these
     * @param receiver takes them until it has enough
     */
    void read(CatalogueFilter filter, Position after, int atOnce, ClientStream.Listening listening, Receiver receiver)
            throws IOException {
        walk(filter, after, atOnce, listening, (reading, batch, from) -> read(reading, batch, from, receiver));
    }

    /**
     * Goes through the sessions that may hold such trials, a few at a time, in one transaction.
     *
     * @param batches takes them until it has enough
     */
    void walk(CatalogueFilter filter, Position after, int atOnce, ClientStream.Listening listening, Batches batches)
            throws IOException {
        Position position = after;
        try (TrialReading reading = TrialReading.begin(database)) {
            boolean more = true;
            while (more) {
                listening.check();
                TrialBatch batch = new TrialBatch(filter, candidates(reading, filter, position, atOnce));
                more = !batch.sessions().isEmpty() && batches.accept(reading, batch, position);
                int last =
                        batch.ids().stream().mapToInt(Integer::intValue).max().orElse(0);
                position = new Position(last + 1, 0);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the trials cannot be read", e);
        }
    }

    /** Something that is read in one go. */
    @FunctionalInterface
    interface Once {
        boolean read(TrialReading reading) throws SQLException, IOException;
    }

    /** Reads in a transaction of its own. */
    boolean once(Once once) throws IOException {
        try (TrialReading reading = TrialReading.begin(database)) {
            return once.read(reading);
        } catch (SQLException e) {
            throw new IllegalStateException("the trials cannot be read", e);
        }
    }

    private static Map<Integer, Candidate> candidates(
            TrialReading reading, CatalogueFilter filter, Position from, int atOnce) throws SQLException, IOException {
        Where whole = filter.whole();
        Where where = filter.sessions().and("s.id >= ?", from.session());
        String sql = Candidate.select(filter, whole) + where.sql() + " ORDER BY s.id LIMIT " + SESSIONS_AT_ONCE;
        Map<Integer, Candidate> candidates = new LinkedHashMap<>();
        long[] trials = {0};
        reading.query(sql, whole.copy().and(where), row -> {
            Candidate candidate = Candidate.read(row);
            candidates.put(candidate.id(), candidate);
            trials[0] += candidate.trials();
            return trials[0] < atOnce;
        });
        return candidates;
    }

    private static boolean read(TrialReading reading, TrialBatch batch, Position after, Receiver receiver)
            throws SQLException, IOException {
        return reading.rows(TRIALS, batch.ids(), from(batch, after), ORDER, row -> {
            Candidate session = batch.sessions().get(row.getInt(1));
            return !batch.passes(session.id(), number(row, TEMP_C), number(row, RH_PCT))
                    || receiver.accept(found(row, session));
        });
    }

    /** What a trial of a batch must satisfy behind a position. */
    static Where from(TrialBatch batch, Position after) {
        Where where = batch.where();
        return after.ordinal() == 0
                ? where
                : where.and("(t.session_id, t.ordinal) > (?, ?)", after.session(), after.ordinal());
    }

    /** A number; NaN when there is none. */
    static double number(ResultSet row, int column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? Double.NaN : value;
    }

    private static FoundTrial found(ResultSet row, Candidate session) throws SQLException {
        List<TrialColumn> columns = TrialColumn.all();
        Map<String, Object> values = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            Object value = columns.get(i) == TrialColumn.STARTED_AT
                    ? row.getObject(FIRST + i, OffsetDateTime.class)
                    : row.getObject(FIRST + i);
            if (value != null) {
                values.put(columns.get(i).jsonName(), value instanceof OffsetDateTime time ? time.toInstant() : value);
            }
        }
        return new FoundTrial(session.room(), row.getInt(1), session.key(), row.getInt(2), values);
    }
}
