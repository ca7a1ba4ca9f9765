package org.tableweather.server.web;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.tableweather.server.TestData;

/** Two connections, both held by somebody else. */
@QuarkusTest
@TestProfile(ExhaustedPoolTest.TwoConnections.class)
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
class ExhaustedPoolTest {
    @Inject
    DataSource database;

    /** A server with few connections and little patience. */
    public static final class TwoConnections implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("quarkus.datasource.jdbc.max-size", "2", "quarkus.datasource.jdbc.acquisition-timeout", "1S");
        }
    }

    @Test
    void isToldAsADatabaseThatDoesNotAnswerAndPasses() throws SQLException {
        try (Connection one = database.getConnection();
                Connection other = database.getConnection()) {
            one.setAutoCommit(false);
            other.setAutoCommit(false);
            given().get("/api/v1/rooms")
                    .then()
                    .statusCode(503)
                    .header("Retry-After", equalTo("60"))
                    .body("code", equalTo("database-unavailable"));
        }
        given().get("/api/v1/rooms").then().statusCode(200);
    }
}
