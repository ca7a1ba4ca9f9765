package org.tableweather.server.catalogue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.postgresql.PGStatement;
import org.tableweather.schema.record.SessionRecord;

/** A read-only transaction in which trials are found by the block range index over their session. */
final class TrialReading implements AutoCloseable {
    private static final int ROWS_AT_ONCE = 2000;

    private final Connection connection;

    private TrialReading(Connection connection) {
        this.connection = connection;
    }

    /** Takes rows; tells whether it wants more. */
    @FunctionalInterface
    interface RowReceiver {
        boolean accept(ResultSet row) throws SQLException, IOException;
    }

    static TrialReading begin(DataSource database) throws SQLException {
        Connection connection = database.getConnection();
        try {
            // a cursor needs a transaction
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                // right after a large contribution the planner knows nothing of it: never walk the whole table
                statement.execute("SET LOCAL enable_seqscan = off");
                statement.execute("SET LOCAL work_mem = '64MB'");
                // the text of times, where the database writes it, ends in +00
                statement.execute("SET LOCAL TimeZone = 'UTC'");
                statement.execute("SET LOCAL DateStyle = 'ISO'");
            }
            return new TrialReading(connection);
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** The stored sessions of these numbers. */
    Map<Integer, SessionRecord> entries(List<Integer> ids) throws SQLException, IOException {
        Map<Integer, SessionRecord> entries = new HashMap<>();
        Where where = new Where().and("id = ANY (?)", (Object) ids.toArray(Integer[]::new));
        query("SELECT id, record FROM session WHERE " + where.sql(), where, row -> {
            entries.put(row.getInt(1), RecordJson.session(row.getString(2)));
            return true;
        });
        return entries;
    }

    /**
     * Reads trials of sessions.
     *
     * @param select up to the condition, with the trial as {@code t}
     * @param ids ordered numbers of the sessions
     * @param where what else they must satisfy
     * @param order SQL after the condition
     * @param receiver takes them until it has enough
     * @return whether it wants more
     */
    boolean rows(String select, List<Integer> ids, Where where, String order, RowReceiver receiver)
            throws SQLException, IOException {
        for (SessionRun run : SessionRun.of(ids)) {
            Where ofRun = ofRun(run, where);
            if (!query(select + " WHERE " + ofRun.sql() + order, ofRun, receiver)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Reads trials of sessions on pages drawn by lot, the same ones every time.
     *
     * @param select up to FROM, with the trial as {@code t}
     * @param percent of the pages
     */
    boolean sampled(String select, List<Integer> ids, Where where, double percent, RowReceiver receiver)
            throws SQLException, IOException {
        Where of = where.copy().and("t.session_id = ANY (?)", (Object) ids.toArray(Integer[]::new));
        String sql = select + " FROM trial t TABLESAMPLE SYSTEM (" + percent + ") REPEATABLE (1) WHERE " + of.sql();
        return query(sql, of, receiver);
    }

    private static Where ofRun(SessionRun run, Where where) {
        Where ofRun = where.copy().and("t.session_id BETWEEN ? AND ?", run.first(), run.last());
        return run.hasGaps()
                ? ofRun.and("t.session_id = ANY (?)", (Object) run.ids().toArray(Integer[]::new))
                : ofRun;
    }

    /** The SQL of {@link #rows} for one run of sessions, its values in it, for COPY, which takes no parameters. */
    String literal(String select, SessionRun run, Where where, String order) throws SQLException {
        return select + " WHERE " + ofRun(run, where).literal(postgres()) + order;
    }

    /** What the database can beside JDBC. */
    PGConnection postgres() throws SQLException {
        return connection.unwrap(PGConnection.class);
    }

    /**
     * Reads rows.
     *
     * @return whether the receiver wants more
     */
    boolean query(String sql, Where where, RowReceiver receiver) throws SQLException, IOException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setFetchSize(ROWS_AT_ONCE);
            // binary from the first row on: doubles need no parsing then
            statement.unwrap(PGStatement.class).setPrepareThreshold(-1);
            where.set(statement, 1);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    if (!receiver.accept(row)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    @Override
    public void close() throws SQLException {
        try (connection) {
            connection.rollback();
        }
    }
}
