package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import javax.sql.DataSource;
import org.tableweather.analyzers.spi.AnalyzerInfo;

/** Summaries as they are kept in the database. */
@ApplicationScoped
class StoredSummaries {
    private final DataSource database;

    StoredSummaries(DataSource database) {
        this.database = database;
    }

    /** The kept summaries of these sessions, as JSON by session. */
    Map<Integer, byte[]> load(AnalyzerInfo analyzer, Collection<Integer> sessions) {
        String sql = "SELECT session_id, summary FROM session_summary"
                + " WHERE analyzer_id = ? AND summary_version = ? AND session_id = ANY (?)";
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            select.setString(1, analyzer.id());
            select.setString(2, analyzer.summaryVersion());
            select.setArray(3, connection.createArrayOf("int4", sessions.toArray()));
            Map<Integer, byte[]> found = new HashMap<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    found.put(row.getInt(1), row.getBytes(2));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("the summaries of " + analyzer.id() + " cannot be read", e);
        }
    }

    /** Keeps summaries; one that is there already stays. */
    void store(AnalyzerInfo analyzer, Map<Integer, byte[]> summaries) {
        String sql = "INSERT INTO session_summary (analyzer_id, summary_version, session_id, summary)"
                + " VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING";
        try (Connection connection = database.getConnection();
                PreparedStatement insert = connection.prepareStatement(sql)) {
            // one commit for all: synced once
            connection.setAutoCommit(false);
            for (Map.Entry<Integer, byte[]> summary : summaries.entrySet()) {
                insert.setString(1, analyzer.id());
                insert.setString(2, analyzer.summaryVersion());
                insert.setInt(3, summary.getKey());
                insert.setBytes(4, summary.getValue());
                insert.addBatch();
            }
            insert.executeBatch();
            connection.commit();
        } catch (SQLException e) {
            throw new IllegalStateException("the summaries of " + analyzer.id() + " cannot be kept", e);
        }
    }
}
