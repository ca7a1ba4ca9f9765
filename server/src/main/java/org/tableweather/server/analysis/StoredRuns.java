package org.tableweather.server.analysis;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.UncheckedIOException;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.sql.DataSource;

/** Runs as they are kept in the database: what goes into them, and what came out. */
@ApplicationScoped
class StoredRuns {
    private static final TypeReference<TreeMap<String, String>> PARAMETERS = new TypeReference<>() {};

    private final DataSource database;
    private final StoredAttempts attempts;
    private final ObjectMapper json;

    StoredRuns(DataSource database, StoredAttempts attempts, ObjectMapper json) {
        this.database = database;
        this.attempts = attempts;
        this.json = json;
    }

    /**
     * Records a run, unless it is there, with the set of its sessions.
     *
     * @param account whose token asks for it; the first one stays
     */
    void add(RunInputs inputs, Optional<Long> account, Instant at) {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            addSet(connection, inputs);
            addRun(connection, inputs, account, at);
            connection.commit();
        } catch (SQLException e) {
            throw new IllegalStateException("run " + inputs.id() + " cannot be recorded", e);
        }
    }

    private static void addSet(Connection connection, RunInputs inputs) throws SQLException {
        String sql = "INSERT INTO session_set (hash, digests) VALUES (?, ?) ON CONFLICT DO NOTHING";
        try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, inputs.datasetHash());
            insert.setArray(2, connection.createArrayOf("text", inputs.digests().toArray()));
            insert.executeUpdate();
        }
    }

    private void addRun(Connection connection, RunInputs inputs, Optional<Long> account, Instant at)
            throws SQLException {
        String sql = "INSERT INTO analysis_run"
                + " (id, analyzer_id, analyzer_version, parameters, set_hash, requested_at, account_id)"
                + " VALUES (?, ?, ?, ?::json, ?, ?, ?) ON CONFLICT (id) DO UPDATE"
                + " SET account_id = coalesce(analysis_run.account_id, excluded.account_id)";
        try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, inputs.id());
            insert.setString(2, inputs.analyzer());
            insert.setString(3, inputs.version());
            insert.setString(4, text(inputs.parameters()));
            insert.setString(5, inputs.datasetHash());
            insert.setObject(6, StoredAttempts.time(at));
            insert.setObject(7, account.orElse(null), Types.BIGINT);
            insert.executeUpdate();
        }
    }

    /** What goes into a run; empty when there is none of this id. */
    Optional<RunInputs> inputs(String id) {
        String sql = "SELECT r.analyzer_id, r.analyzer_version, r.parameters::text, s.hash, s.digests"
                + " FROM analysis_run r JOIN session_set s ON s.hash = r.set_hash WHERE r.id = ?";
        return one(sql, id, row -> {
            Array digests = row.getArray(5);
            return new RunInputs(
                    id,
                    row.getString(1),
                    row.getString(2),
                    parameters(row.getString(3)),
                    row.getString(4),
                    List.of((String[]) digests.getArray()));
        });
    }

    /** A run as the public sees it; empty when there is none of this id. */
    Optional<RunView> view(String id) {
        // first: an attempt that is done then has its result in the run
        List<AttemptView> made = attempts.of(id);
        String sql = "SELECT r.analyzer_id, r.analyzer_version, r.parameters::text, s.hash, cardinality(s.digests),"
                + " r.requested_at, r.result_sha256, length(r.result)"
                + " FROM analysis_run r JOIN session_set s ON s.hash = r.set_hash WHERE r.id = ?";
        return made.isEmpty() ? Optional.empty() : one(sql, id, row -> view(id, made, row));
    }

    private RunView view(String id, List<AttemptView> made, ResultSet row) throws SQLException {
        String path = RunView.path(id);
        Optional<String> kept = Optional.ofNullable(row.getString(7));
        int bytes = row.getInt(8);
        return new RunView(
                id,
                kept.isPresent() ? AttemptState.DONE : made.get(made.size() - 1).state(),
                row.getString(1),
                row.getString(2),
                parameters(row.getString(3)),
                new RunView.Dataset(row.getString(4), row.getInt(5)),
                row.getObject(6, OffsetDateTime.class).toInstant(),
                Optional.empty(),
                kept.map(sha256 -> new RunView.Result(sha256, bytes, path + "/result")),
                made.stream().map(attempt -> attempt.beside(kept)).toList(),
                path + "/sessions",
                path + "/summaries",
                path + "/events");
    }

    /** The kept bytes; empty while there are none. */
    Optional<byte[]> result(String id) {
        return one("SELECT result FROM analysis_run WHERE id = ? AND result IS NOT NULL", id, row -> row.getBytes(1));
    }

    @FunctionalInterface
    private interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private <T> Optional<T> one(String sql, String id, RowReader<T> reader) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            select.setString(1, id);
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? Optional.of(reader.read(row)) : Optional.empty();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("run " + id + " cannot be read", e);
        }
    }

    private String text(Map<String, String> parameters) {
        try {
            return json.writeValueAsString(parameters);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("parameters are plain text", e);
        }
    }

    private SortedMap<String, String> parameters(String text) {
        try {
            return json.readValue(text, PARAMETERS);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("parameters were written as plain text", e);
        }
    }
}
