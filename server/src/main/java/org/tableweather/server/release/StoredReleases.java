package org.tableweather.server.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.tableweather.server.accounts.AuditTrail;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Releases in the database: their states, and which contributions went in. */
@ApplicationScoped
class StoredReleases {
    private static final String COLUMNS =
            "SELECT number, title, released_on, state, requested_at, frozen_at, manifest_sha256, failure FROM release";

    private final DataSource database;
    private final AuditTrail audit;
    private final Clock clock;

    StoredReleases(DataSource database, AuditTrail audit, Clock clock) {
        this.database = database;
        this.audit = audit;
        this.clock = clock;
    }

    /** Works on the current transaction's connection. */
    @FunctionalInterface
    private interface Work<T> {
        T with(Connection connection) throws SQLException;
    }

    /**
     * Fixes what goes into the next release: all that is accepted at this moment.
     *
     * @return its number
     * @throws Refusal when one is being built, or nothing is accepted
     */
    @Transactional
    int begin(Caller caller, String title) {
        return on(connection -> {
            // one at a time: readers of the table are not disturbed
            execute(connection, "LOCK TABLE release IN SHARE ROW EXCLUSIVE MODE");
            refuseWhileBuilding(connection);
            execute(connection, "DELETE FROM release WHERE state = 'failed'");
            int number = one(connection, "SELECT coalesce(max(number), 0) + 1 FROM release");
            Instant now = Instant.now(clock);
            execute(
                    connection,
                    "INSERT INTO release (number, title, released_on, state, requested_at)"
                            + " VALUES (?, ?, ?, 'building', ?)",
                    number,
                    title,
                    LocalDate.ofInstant(now, ZoneOffset.UTC),
                    now.atOffset(ZoneOffset.UTC));
            int contributions = execute(
                    connection,
                    "INSERT INTO release_contribution"
                            + " SELECT ?, id FROM contribution WHERE state = 'accepted' AND trials > 0",
                    number);
            if (contributions == 0) {
                throw new Refusal(
                        ErrorCode.WRONG_STATE,
                        "no contribution is accepted, so there is nothing to release: accept some first");
            }
            audit.record(caller, "release.requested", "release " + number, contributions + " contributions");
            return number;
        });
    }

    private static void refuseWhileBuilding(Connection connection) throws SQLException {
        int building = one(connection, "SELECT coalesce(max(number), 0) FROM release WHERE state = 'building'");
        if (building > 0) {
            throw new Refusal(
                    ErrorCode.WRONG_STATE,
                    "release " + building + " is being built: wait until GET " + ReleaseView.path(building)
                            + " says frozen");
        }
    }

    /** The release is complete. */
    @Transactional
    void frozen(int number, String manifestSha256) {
        on(connection -> execute(
                connection,
                "UPDATE release SET state = 'frozen', frozen_at = ?, manifest_sha256 = ?"
                        + " WHERE number = ? AND state = 'building'",
                Instant.now(clock).atOffset(ZoneOffset.UTC),
                manifestSha256,
                number));
        audit.record(Caller.SERVER, "release.frozen", "release " + number, manifestSha256);
    }

    /** The release could not be built. */
    @Transactional
    void failed(int number, String why) {
        on(connection -> execute(
                connection,
                "UPDATE release SET state = 'failed', failure = ? WHERE number = ? AND state = 'building'",
                why,
                number));
        audit.record(Caller.SERVER, "release.failed", "release " + number, why);
    }

    /**
     * Latest first.
     *
     * @param before number that they must be below
     * @param limit most of them
     */
    @Transactional
    List<StoredRelease> list(long before, int limit) {
        return on(connection ->
                select(connection, COLUMNS + " WHERE number < ? ORDER BY number DESC LIMIT ?", before, limit));
    }

    /** The release of this number. */
    @Transactional
    Optional<StoredRelease> find(int number) {
        return on(connection -> select(connection, COLUMNS + " WHERE number = ?", number)).stream()
                .findFirst();
    }

    /** The last complete release before this number. */
    @Transactional
    Optional<StoredRelease> frozenBefore(int number) {
        String sql = COLUMNS + " WHERE state = 'frozen' AND number < ? ORDER BY number DESC LIMIT 1";
        return on(connection -> select(connection, sql, number)).stream().findFirst();
    }

    /** What was being built when the server ended. */
    @Transactional
    List<StoredRelease> building() {
        return on(connection -> select(connection, COLUMNS + " WHERE state = 'building'"));
    }

    /** The numbers of the contributions that go in. */
    @Transactional
    List<Long> contributions(int number) {
        return on(connection -> {
            String sql = "SELECT contribution_id FROM release_contribution WHERE number = ? ORDER BY contribution_id";
            try (PreparedStatement select = connection.prepareStatement(sql)) {
                select.setInt(1, number);
                List<Long> ids = new ArrayList<>();
                try (ResultSet row = select.executeQuery()) {
                    while (row.next()) {
                        ids.add(row.getLong(1));
                    }
                }
                return ids;
            }
        });
    }

    private <T> T on(Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.with(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("the releases cannot be read or written", e);
        }
    }

    private static int execute(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = prepared(connection, sql, values)) {
            statement.execute();
            return statement.getUpdateCount();
        }
    }

    private static int one(Connection connection, String sql) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            row.next();
            return row.getInt(1);
        }
    }

    private static List<StoredRelease> select(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement select = prepared(connection, sql, values);
                ResultSet row = select.executeQuery()) {
            List<StoredRelease> releases = new ArrayList<>();
            while (row.next()) {
                releases.add(release(row));
            }
            return releases;
        }
    }

    private static PreparedStatement prepared(Connection connection, String sql, Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
        return statement;
    }

    private static StoredRelease release(ResultSet row) throws SQLException {
        return new StoredRelease(
                row.getInt(1),
                row.getString(2),
                row.getObject(3, LocalDate.class),
                ReleaseState.of(row.getString(4)),
                row.getObject(5, OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject(6, OffsetDateTime.class)).map(OffsetDateTime::toInstant),
                Optional.ofNullable(row.getString(7)),
                Optional.ofNullable(row.getString(8)));
    }
}
