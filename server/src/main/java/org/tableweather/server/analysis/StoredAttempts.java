package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;

/**
 * The attempts to make runs. Every transition names the state it starts from, so that of two that come at once, the end
 * of the work and its cancelling, one alone takes place.
 */
@ApplicationScoped
class StoredAttempts {
    /** Attempts of a run that are told; older ones are forgotten. */
    private static final int KEPT = 20;

    private final DataSource database;

    StoredAttempts(DataSource database) {
        this.database = database;
    }

    static OffsetDateTime time(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    /**
     * Records a new attempt that waits for its turn.
     *
     * @param account whose token starts it
     * @return its number
     */
    int add(String run, Optional<Long> account, Instant at) {
        String sql = "INSERT INTO run_attempt (run_id, number, state, requested_at, account_id)"
                + " SELECT ?, coalesce(max(number), 0) + 1, 'queued', ?, ? FROM run_attempt WHERE run_id = ?"
                + " RETURNING number";
        try (Connection connection = database.getConnection();
                PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, run);
            insert.setObject(2, time(at));
            insert.setObject(3, account.orElse(null), Types.BIGINT);
            insert.setString(4, run);
            try (ResultSet row = insert.executeQuery()) {
                row.next();
                int number = row.getInt(1);
                String forget = "DELETE FROM run_attempt WHERE run_id = ? AND number <= ?";
                update(connection, forget, run, number - KEPT);
                return number;
            }
        } catch (SQLException e) {
            throw unchangeable(run, e);
        }
    }

    /** Its turn has come; false when it was cancelled before. */
    boolean begin(String run, int number, Instant at) {
        return update(
                        "UPDATE run_attempt SET state = 'running', started_at = ?"
                                + " WHERE run_id = ? AND number = ? AND state = 'queued'",
                        time(at),
                        run,
                        number)
                == 1;
    }

    /** It ended without a result; false when it had ended already. */
    boolean end(String run, int number, AttemptState how, String why, Instant at) {
        return update(
                        "UPDATE run_attempt SET state = ?, failure = ?, ended_at = ?"
                                + " WHERE run_id = ? AND number = ? AND state IN ('queued', 'running')",
                        how.schemaName(),
                        why,
                        time(at),
                        run,
                        number)
                == 1;
    }

    /**
     * It was made: the run keeps the bytes if it has none yet, the attempt their digest.
     *
     * @return false when it was cancelled before; nothing is kept then
     */
    boolean finish(String run, int number, byte[] result, String sha256, Instant at) {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            boolean made = update(
                            connection,
                            "UPDATE run_attempt SET state = 'done', result_sha256 = ?, ended_at = ?"
                                    + " WHERE run_id = ? AND number = ? AND state = 'running'",
                            sha256,
                            time(at),
                            run,
                            number)
                    == 1;
            if (made) {
                String keep = "UPDATE analysis_run SET result = ?, result_sha256 = ? WHERE id = ? AND result IS NULL";
                update(connection, keep, result, sha256, run);
            }
            connection.commit();
            return made;
        } catch (SQLException e) {
            throw unchangeable(run, e);
        }
    }

    /**
     * What waited or ran when the server was ended will not be made by itself.
     *
     * @return how many
     */
    int interruptAll(String why, Instant at) {
        return update(
                "UPDATE run_attempt SET state = 'interrupted', failure = ?, ended_at = ?"
                        + " WHERE state IN ('queued', 'running')",
                why,
                time(at));
    }

    /** Whose token started an attempt; empty when none was sent. */
    Optional<Long> starter(String run, int number) {
        String sql = "SELECT account_id FROM run_attempt WHERE run_id = ? AND number = ?";
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            select.setString(1, run);
            select.setInt(2, number);
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? Optional.ofNullable(row.getObject(1, Long.class)) : Optional.empty();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the attempts of run " + run + " cannot be read", e);
        }
    }

    /** The latest attempts of a run, oldest first. */
    List<AttemptView> of(String run) {
        String sql = "SELECT number, state, requested_at, started_at, ended_at, failure, result_sha256"
                + " FROM run_attempt WHERE run_id = ? ORDER BY number";
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            select.setString(1, run);
            List<AttemptView> attempts = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    attempts.add(attempt(row));
                }
            }
            return attempts;
        } catch (SQLException e) {
            throw new IllegalStateException("the attempts of run " + run + " cannot be read", e);
        }
    }

    private static AttemptView attempt(ResultSet row) throws SQLException {
        return new AttemptView(
                row.getInt(1),
                AttemptState.of(row.getString(2)),
                row.getObject(3, OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject(4, OffsetDateTime.class)).map(OffsetDateTime::toInstant),
                Optional.ofNullable(row.getObject(5, OffsetDateTime.class)).map(OffsetDateTime::toInstant),
                Optional.ofNullable(row.getString(6)),
                Optional.ofNullable(row.getString(7)),
                Optional.empty());
    }

    private int update(String sql, Object... values) {
        try (Connection connection = database.getConnection()) {
            return update(connection, sql, values);
        } catch (SQLException e) {
            throw unchangeable(String.valueOf(values[0]), e);
        }
    }

    private static int update(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                update.setObject(i + 1, values[i]);
            }
            return update.executeUpdate();
        }
    }

    private static IllegalStateException unchangeable(String run, SQLException e) {
        return new IllegalStateException("the attempts of run " + run + " cannot be changed", e);
    }
}
