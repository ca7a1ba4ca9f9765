package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import javax.sql.DataSource;
import org.postgresql.PGStatement;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What analyses read: which sessions are published, and their trials in canonical order. */
@ApplicationScoped
public class PublishedSessions {
    private static final int ROWS_AT_ONCE = 5000;
    private static final int SESSIONS_AT_ONCE = 500;

    private final DataSource database;

    PublishedSessions(DataSource database) {
        this.database = database;
    }

    /** Takes sessions. */
    @FunctionalInterface
    public interface Receiver {
        /**
         * Takes one session.
         *
         * @param id its number here
         * @param session as it was contributed, the room's position rounded
         * @param trials all of them in {@link Trial#CANONICAL_ORDER}
         */
        void accept(int id, SessionRecord session, List<Trial> trials) throws SQLException, IOException;
    }

    /** All published sessions, by number. */
    public List<PublishedSession> all() {
        String sql = "SELECT s.id, r.key, s.key, s.digest, s.invented, s.trials FROM session s"
                + " JOIN room r ON r.id = s.room_id WHERE s.published ORDER BY s.id";
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            List<PublishedSession> sessions = new ArrayList<>();
            while (row.next()) {
                sessions.add(new PublishedSession(
                        row.getInt(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getBoolean(5),
                        row.getLong(6)));
            }
            return sessions;
        } catch (SQLException e) {
            throw new IllegalStateException("the published sessions cannot be read", e);
        }
    }

    /**
     * Reads sessions with their trials, one at a time.
     *
     * @param ids which
     * @param receiver takes them, ordered by number
     */
    public void read(Collection<Integer> ids, Receiver receiver) {
        List<Integer> ordered = ids.stream().sorted().toList();
        try (Connection connection = database.getConnection()) {
            // a cursor needs a transaction
            connection.setAutoCommit(false);
            for (int from = 0; from < ordered.size(); from += SESSIONS_AT_ONCE) {
                List<Integer> part = ordered.subList(from, Math.min(ordered.size(), from + SESSIONS_AT_ONCE));
                read(connection, part, receiver);
            }
            connection.rollback();
        } catch (SQLException | IOException e) {
            throw new IllegalStateException("the trials of the sessions cannot be read", e);
        }
    }

    private static void read(Connection connection, List<Integer> ids, Receiver receiver)
            throws SQLException, IOException {
        Object[] numbers = ids.toArray();
        try (PreparedStatement records =
                        connection.prepareStatement("SELECT id, record FROM session WHERE id = ANY (?) ORDER BY id");
                PreparedStatement trials = connection.prepareStatement("SELECT session_id, " + TrialColumn.sqlNames()
                        + " FROM trial WHERE session_id = ANY (?) ORDER BY session_id, ordinal")) {
            records.setArray(1, connection.createArrayOf("int4", numbers));
            trials.setArray(1, connection.createArrayOf("int4", numbers));
            trials.setFetchSize(ROWS_AT_ONCE);
            inBinary(trials);
            try (ResultSet session = records.executeQuery();
                    ResultSet trial = trials.executeQuery()) {
                merge(session, trial, receiver);
            }
        }
    }

    /** From the first row on: doubles need no parsing then. */
    static void inBinary(PreparedStatement statement) throws SQLException {
        statement.unwrap(PGStatement.class).setPrepareThreshold(-1);
    }

    private static void merge(ResultSet session, ResultSet trial, Receiver receiver) throws SQLException, IOException {
        boolean more = trial.next();
        while (session.next()) {
            int id = session.getInt(1);
            SessionRecord entry = RecordJson.session(session.getString(2));
            List<Trial> trials = new ArrayList<>();
            while (more && trial.getInt(1) == id) {
                trials.add(TrialRow.read(trial, 2, entry.session().id()));
                more = trial.next();
            }
            trials.sort(Trial.CANONICAL_ORDER);
            receiver.accept(id, entry, trials);
        }
    }
}
