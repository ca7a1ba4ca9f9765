package org.tableweather.server.analysis;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * All runs that are kept, and which are not kept any longer: of those that nobody asked for with a token all but the latest few, and,
 * where the operator sets a time, those whose latest attempt is older. A run on its way stays.
 */
@ApplicationScoped
class KeptRuns {
    private static final TypeReference<TreeMap<String, String>> PARAMETERS = new TypeReference<>() {};
    private static final String FORGET = "WITH latest AS (SELECT run_id, max(requested_at) AS asked,"
            + " bool_or(state IN ('queued', 'running')) AS active FROM run_attempt GROUP BY run_id),"
            + " placed AS (SELECT run_id, asked, active, r.account_id IS NULL AS nobodys,"
            + " row_number() OVER (PARTITION BY r.account_id IS NULL ORDER BY asked DESC, run_id) AS place"
            + " FROM latest JOIN analysis_run r ON r.id = run_id)"
            + " DELETE FROM analysis_run USING placed WHERE id = run_id AND NOT active"
            + " AND (nobodys AND place > ? OR asked < ?)";
    private static final String LIST = "SELECT r.id, r.analyzer_id, r.analyzer_version, r.parameters::text, s.hash,"
            + " cardinality(s.digests), r.requested_at, r.result_sha256, length(r.result), a.state"
            + " FROM analysis_run r JOIN session_set s ON s.hash = r.set_hash"
            + " JOIN LATERAL (SELECT state FROM run_attempt WHERE run_id = r.id ORDER BY number DESC LIMIT 1) a ON true"
            + " WHERE (r.requested_at, r.id) < (?, ?) AND (? = '' OR r.analyzer_id = ?)"
            + " ORDER BY r.requested_at DESC, r.id DESC LIMIT ?";

    private final DataSource database;
    private final ObjectMapper json;
    private final Clock clock;
    private final int most;
    private final int days;

    KeptRuns(
            DataSource database,
            ObjectMapper json,
            Clock clock,
            @ConfigProperty(name = "tableweather.runs.kept") int most,
            @ConfigProperty(name = "tableweather.runs.kept-days") int days) {
        if (most < 0 || days < 0) {
            throw new IllegalArgumentException("tableweather.runs.kept = " + most
                    + " and tableweather.runs.kept-days = " + days + " must be at least 0: correct them");
        }
        this.database = database;
        this.json = json;
        this.clock = clock;
        this.most = most;
        this.days = days;
    }

    /** Where a list goes on: behind this run. */
    record Position(Instant requestedAt, String id) {
        static final Position START = new Position(Instant.parse("9999-01-01T00:00:00Z"), "");
    }

    /**
     * A run in the list of all.
     *
     * @param id of it
     * @param state {@code done} as soon as a result is kept, else that of the latest attempt
     * @param analyzer id
     * @param version of the analyzer
     * @param parameters complete, by name
     * @param dataset which sessions
     * @param requestedAt when it was first asked for
     * @param result the kept bytes
     * @param address path of the run
     */
    record Listed(
            String id,
            AttemptState state,
            String analyzer,
            String version,
            TreeMap<String, String> parameters,
            RunView.Dataset dataset,
            Instant requestedAt,
            Optional<RunView.Result> result,
            String address) {}

    /**
     * Some runs, the latest first.
     *
     * @param analyzer of these; empty for all
     */
    List<Listed> list(String analyzer, Position after, int limit) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(LIST)) {
            select.setObject(1, StoredAttempts.time(after.requestedAt()));
            select.setString(2, after.id());
            select.setString(3, analyzer);
            select.setString(4, analyzer);
            select.setInt(5, limit);
            List<Listed> runs = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    runs.add(listed(row));
                }
            }
            return runs;
        } catch (SQLException e) {
            throw new IllegalStateException("the runs cannot be listed", e);
        }
    }

    private Listed listed(ResultSet row) throws SQLException {
        String path = RunView.path(row.getString(1));
        int bytes = row.getInt(9);
        Optional<RunView.Result> result = Optional.ofNullable(row.getString(8))
                .map(sha256 -> new RunView.Result(sha256, bytes, path + "/result"));
        return new Listed(
                row.getString(1),
                result.isPresent() ? AttemptState.DONE : AttemptState.of(row.getString(10)),
                row.getString(2),
                row.getString(3),
                parameters(row.getString(4)),
                new RunView.Dataset(row.getString(5), row.getInt(6)),
                row.getObject(7, OffsetDateTime.class).toInstant(),
                result,
                path);
    }

    private TreeMap<String, String> parameters(String text) {
        try {
            return json.readValue(text, PARAMETERS);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("parameters were written as plain text", e);
        }
    }

    /** Removes what is not kept any longer. */
    void forget() {
        Instant oldest = days == 0 ? Instant.EPOCH : Instant.now(clock).minus(Duration.ofDays(days));
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (PreparedStatement delete = connection.prepareStatement(FORGET)) {
                delete.setInt(1, most);
                delete.setObject(2, StoredAttempts.time(oldest));
                if (delete.executeUpdate() > 0) {
                    removeSets(connection);
                }
            }
            connection.commit();
        } catch (SQLException e) {
            throw new IllegalStateException("runs that are no longer kept cannot be removed", e);
        }
    }

    private static void removeSets(Connection connection) throws SQLException {
        String sql = "DELETE FROM session_set s WHERE NOT EXISTS (SELECT FROM analysis_run WHERE set_hash = s.hash)";
        try (PreparedStatement delete = connection.prepareStatement(sql)) {
            delete.executeUpdate();
        }
    }
}
