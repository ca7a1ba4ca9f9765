package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.api.configuration.Configuration;
import org.flywaydb.core.api.migration.Context;
import org.junit.jupiter.api.Test;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** A session that was here before the measures gets what a new one gets. */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class SessionMeasuresTest {
    private static final String FEATURES =
            "SELECT s.id, s.climate_complete, s.playing_length_mm, s.wool_pct, s.cloth_age_days,"
                    + " (SELECT string_agg(m.measure || ' ' || m.low || ' ' || m.high, ', ' ORDER BY m.measure)"
                    + " FROM session_measure m WHERE m.session_id = s.id) FROM session s ORDER BY s.id";

    @Inject
    DataSource database;

    @Test
    void theMigrationGivesOldSessionsWhatNewOnesHave() throws SQLException {
        Tokens.as(Tokens.of("measures", "contributor", "contribute"))
                .contentType("application/zip")
                .body(Examples.archive("measures"))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            List<String> before = features(statement);
            assertThat(before).hasSizeGreaterThanOrEqualTo(2);
            assertThat(before.get(before.size() - 1)).contains("cloth-regain", "dew-point", "mixing-ratio", "85");
            statement.executeUpdate("DELETE FROM session_measure");
            statement.executeUpdate(
                    "UPDATE session SET climate_complete = false, playing_length_mm = NULL, wool_pct = NULL,"
                            + " cloth_age_days = NULL");
            assertThat(features(statement)).isNotEqualTo(before);
            new V008_1__SessionMeasures().migrate(new Context() {
                @Override
                public Configuration getConfiguration() {
                    throw new UnsupportedOperationException("the migration needs no configuration");
                }

                @Override
                public Connection getConnection() {
                    return connection;
                }
            });
            assertThat(features(statement)).isEqualTo(before);
            connection.rollback();
        }
    }

    private static List<String> features(Statement statement) throws SQLException {
        List<String> features = new ArrayList<>();
        try (ResultSet row = statement.executeQuery(FEATURES)) {
            while (row.next()) {
                StringBuilder line = new StringBuilder();
                for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
                    line.append(row.getString(i)).append("; ");
                }
                features.add(line.toString());
            }
        }
        return features;
    }
}
