package org.tableweather.server.catalogue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.tableweather.server.accounts.Caller;

/** Saved queries as rows. */
@ApplicationScoped
class QueryTable {
    private static final TypeReference<TreeMap<String, String>> PARAMETERS = new TypeReference<>() {};
    private static final String LIVE = "SELECT q.name, q.version, a.name, q.parameters::text, q.saved_at"
            + " FROM saved_query q JOIN account a ON a.id = q.account_id WHERE q.deleted_at IS NULL AND ";
    private static final String IS_LAST =
            "q.version = (SELECT max(l.version) FROM saved_query l WHERE l.name = q.name)";

    private final DataSource database;
    private final ObjectMapper json;

    QueryTable(DataSource database, ObjectMapper json) {
        this.database = database;
        this.json = json;
    }

    Optional<SavedQuery> last(String name) {
        return read(LIVE + IS_LAST + " AND q.name = ?", name).stream().findFirst();
    }

    Optional<SavedQuery> version(String name, int version) {
        return read(LIVE + "q.name = ? AND q.version = ?", name, version).stream()
                .findFirst();
    }

    List<SavedQuery> list(String after, int most) {
        return read(LIVE + IS_LAST + " AND q.name > ? ORDER BY q.name LIMIT ?", after, most);
    }

    List<String> names() {
        return list("", Integer.MAX_VALUE).stream().map(SavedQuery::name).toList();
    }

    private List<SavedQuery> read(String sql, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = prepared(connection, sql, values);
                ResultSet row = select.executeQuery()) {
            List<SavedQuery> queries = new ArrayList<>();
            while (row.next()) {
                queries.add(new SavedQuery(
                        row.getString(1),
                        row.getInt(2),
                        row.getString(3),
                        parameters(row.getString(4)),
                        row.getObject(5, OffsetDateTime.class).toInstant()));
            }
            return queries;
        } catch (SQLException e) {
            throw new IllegalStateException("the saved queries cannot be read", e);
        }
    }

    /** Whose the name is, deleted or not. */
    Optional<Long> owner(String name) {
        try (Connection connection = database.getConnection();
                PreparedStatement select =
                        prepared(connection, "SELECT account_id FROM saved_query WHERE name = ? LIMIT 1", name);
                ResultSet row = select.executeQuery()) {
            return row.next() ? Optional.of(row.getLong(1)) : Optional.empty();
        } catch (SQLException e) {
            throw new IllegalStateException("the owner of query " + name + " cannot be read", e);
        }
    }

    /** Adds the next version. */
    SavedQuery add(Caller caller, String name, SortedMap<String, String> filter, Instant at) {
        String sql = "INSERT INTO saved_query (name, version, account_id, parameters, saved_at)"
                + " SELECT ?, coalesce(max(version), 0) + 1, ?, ?::json, ? FROM saved_query WHERE name = ?"
                + " RETURNING version";
        try (Connection connection = database.getConnection();
                PreparedStatement insert = prepared(
                        connection, sql, name, caller.accountId(), text(filter), at.atOffset(ZoneOffset.UTC), name);
                ResultSet row = insert.executeQuery()) {
            row.next();
            return new SavedQuery(name, row.getInt(1), caller.name(), filter, at);
        } catch (SQLException e) {
            throw new IllegalStateException("query " + name + " cannot be saved", e);
        }
    }

    void end(String name, Instant at) {
        String sql = "UPDATE saved_query SET deleted_at = ? WHERE name = ? AND deleted_at IS NULL";
        try (Connection connection = database.getConnection();
                PreparedStatement update = prepared(connection, sql, at.atOffset(ZoneOffset.UTC), name)) {
            update.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("query " + name + " cannot be deleted", e);
        }
    }

    private static PreparedStatement prepared(Connection connection, String sql, Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
        return statement;
    }

    private String text(SortedMap<String, String> filter) {
        try {
            return json.writeValueAsString(filter);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("texts have a JSON form", e);
        }
    }

    private SortedMap<String, String> parameters(String text) {
        try {
            return json.readValue(text, PARAMETERS);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("not a query that we saved", e);
        }
    }
}
