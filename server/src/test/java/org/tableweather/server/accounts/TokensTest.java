package org.tableweather.server.accounts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.tableweather.server.Tokens.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;
import org.tableweather.server.datafolder.DataFolder;

@QuarkusTest
@QuarkusTestResource(TestData.class)
class TokensTest {
    @Inject
    DataSource database;

    @Inject
    DataFolder folder;

    private static ValidatableResponse issue(String token, Map<String, Object> request) {
        return as(token)
                .contentType("application/json")
                .body(request)
                .post("/api/v1/tokens")
                .then();
    }

    @Test
    void theOperatorsFirstTokenIsReadableByItsOwnerAlone() throws IOException {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.operatorToken())))
                .isEqualTo("rw-------");
        as(Tokens.operator())
                .get("/api/v1/accounts/me")
                .then()
                .statusCode(200)
                .body("account.role", equalTo("operator"))
                .body("scopes", equalTo(List.of("contribute", "curate", "operate")));
    }

    @Test
    void noTokenIsInTheDatabase() throws SQLException {
        String token = Tokens.of("hash-check", "contributor", "contribute");
        // 256 bits in base64url without padding: 43 characters (RFC 4648, section 5)
        assertThat(token).matches("tw_[A-Za-z0-9_-]{43}");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT t::text FROM api_token t")) {
            while (rows.next()) {
                assertThat(rows.getString(1)).doesNotContain(token).doesNotContain(token.substring(3));
            }
        }
    }

    @Test
    void aRevokedTokenIsRefused() {
        String token = Tokens.of("revoke-me", "contributor", "contribute");
        int id = as(token)
                .get("/api/v1/accounts/me")
                .then()
                .statusCode(200)
                .extract()
                .path("token");
        as(token).delete("/api/v1/tokens/" + id).then().statusCode(204);
        as(token).get("/api/v1/accounts/me").then().statusCode(401).body("code", equalTo("not-authenticated"));
    }

    @Test
    void anExpiredTokenIsRefused() throws SQLException {
        String token = Tokens.of("expire-me", "contributor", "contribute");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("UPDATE api_token SET expires_at = now() - interval '1 second' WHERE account_id ="
                    + " (SELECT id FROM account WHERE name = 'expire-me')");
        }
        as(token).get("/api/v1/accounts/me").then().statusCode(401);
    }

    @Test
    void aTokenMakesOnlyNarrowerOnes() {
        String token = Tokens.of("narrow", "curator", "contribute");
        issue(token, Map.of("label", "n", "scopes", List.of("contribute"), "expiresInDays", 365))
                .statusCode(403);
        issue(token, Map.of("label", "n", "scopes", List.of("curate"), "expiresInDays", 1))
                .statusCode(403);
        int other = Tokens.account("narrow-other", "contributor");
        issue(token, Map.of("account", other, "label", "n", "scopes", List.of("contribute"), "expiresInDays", 1))
                .statusCode(403)
                .body("code", equalTo("not-yours"));
    }

    @Test
    void scopesStayWithinTheAccountsRole() {
        int account = Tokens.account("only-contributes", "contributor");
        issue(
                        Tokens.operator(),
                        Map.of("account", account, "label", "n", "scopes", List.of("curate"), "expiresInDays", 1))
                .statusCode(403)
                .body("detail", matchesPattern("scopes = curate exceed those of a contributor, contribute: .*"));
    }

    @Test
    void aTokenSeesAndEndsOnlyItsOwnAccountsTokens() {
        String mine = Tokens.of("mine", "contributor", "contribute");
        String yours = Tokens.of("yours", "contributor", "contribute");
        int account = as(mine).get("/api/v1/accounts/me").then().extract().path("account.id");
        int yourToken = as(yours).get("/api/v1/accounts/me").then().extract().path("token");
        as(mine).get("/api/v1/tokens").then().statusCode(200).body("tokens.account", everyItem(equalTo(account)));
        as(mine).delete("/api/v1/tokens/" + yourToken).then().statusCode(404);
        as(yours).get("/api/v1/accounts/me").then().statusCode(200);
    }

    @Test
    void aNameIsTakenOnce() {
        Tokens.account("once", "contributor");
        as(Tokens.operator())
                .contentType("application/json")
                .body(Map.of("name", "once", "role", "curator"))
                .post("/api/v1/accounts")
                .then()
                .statusCode(409)
                .body("code", equalTo("name-taken"));
    }

    @Test
    void everyWriteIsInTheAuditTrail() {
        String token = Tokens.of("audited", "contributor", "contribute");
        int id = as(token).get("/api/v1/accounts/me").then().extract().path("token");
        as(token).delete("/api/v1/tokens/" + id).then().statusCode(204);
        as(Tokens.operator())
                .get("/api/v1/audit?limit=1000")
                .then()
                .statusCode(200)
                .body("entries.findAll { it.subject == 'token " + id + "' }.action", hasItem("token.issued"))
                .body("entries.findAll { it.subject == 'token " + id + "' }.action", hasItem("token.revoked"))
                .body("entries.action", hasItem("account.created"))
                .body("entries.detail", not(hasItem(token)));
    }

    @Test
    void theAuditTrailIsWalkedByCursor() {
        Tokens.account("walk-1", "contributor");
        Tokens.account("walk-2", "contributor");
        String next = as(Tokens.operator())
                .get("/api/v1/audit?limit=1")
                .then()
                .extract()
                .path("next");
        List<String> second = as(Tokens.operator())
                .get("/api/v1/audit?limit=1&after=" + next)
                .then()
                .statusCode(200)
                .extract()
                .path("entries.detail");
        assertThat(second).containsExactly("walk-1, contributor");
    }
}
