package org.tableweather.server.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** Members and media type: RFC 9457, sections 3.1 and 3. */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class ProblemsTest {

    private static ValidatableResponse isProblem(Response response, int status, String code) {
        return response.then()
                .statusCode(status)
                .contentType(startsWith("application/problem+json"))
                .body("type", equalTo("urn:tableweather:problem:" + code))
                .body("status", equalTo(status))
                .body("code", equalTo(code))
                .body("title", not(equalTo("")))
                .body("detail", containsString(":"));
    }

    @Test
    void unknownAddresses() {
        isProblem(given().get("/api/v1/nothing-here"), 404, "not-found");
        given().get("/nothing-here")
                .then()
                .statusCode(404)
                .contentType(startsWith("text/html"))
                .body(containsString("/nothing-here does not exist"));
        isProblem(given().get("/api/v1/sessions/999999999"), 404, "not-found");
        isProblem(given().get("/api/v1/analyzers/nobody"), 404, "not-found");
    }

    @Test
    void methodsThatAnAddressDoesNotTake() {
        isProblem(given().contentType(ContentType.JSON).body("{}").put("/api/v1/rooms"), 405, "method-not-allowed")
                .header("Allow", containsString("GET"));
    }

    @Test
    void mediaTypesThatCannotBeMade() {
        isProblem(given().accept("image/png").get("/api/v1/rooms"), 406, "not-acceptable");
    }

    @Test
    void mediaTypesThatAreNotTaken() {
        isProblem(
                Tokens.as(Tokens.operator()).contentType("text/plain").body("x").post("/api/v1/contributions"),
                415,
                "unsupported-media-type");
    }

    @Test
    void missingTokensAndUnknownOnes() {
        isProblem(
                        given().contentType("application/zip")
                                .body(new byte[] {1})
                                .post("/api/v1/contributions"),
                        401,
                        "not-authenticated")
                .header("WWW-Authenticate", "Bearer");
        isProblem(Tokens.as("tw_guess").get("/api/v1/tokens"), 401, "not-authenticated");
        isProblem(given().header("Authorization", "Basic YTpi").get("/api/v1/tokens"), 401, "not-authenticated");
    }

    @Test
    void scopesThatDoNotReach() {
        String token = Tokens.of("problems-contributor", "contributor", "contribute");
        isProblem(Tokens.as(token).get("/api/v1/accounts"), 403, "missing-scope");
    }

    @Test
    void bodiesThatAreNotJson() {
        isProblem(
                Tokens.as(Tokens.operator())
                        .contentType(ContentType.JSON)
                        .body("{\"name\":")
                        .post("/api/v1/accounts"),
                400,
                "malformed-body");
        isProblem(
                Tokens.as(Tokens.operator())
                        .contentType(ContentType.JSON)
                        .body("{\"name\":\"x\",\"role\":\"king\"}")
                        .post("/api/v1/accounts"),
                400,
                "malformed-body");
    }

    @Test
    void fieldsThatBreakTheirBounds() {
        isProblem(
                        Tokens.as(Tokens.operator())
                                .contentType(ContentType.JSON)
                                .body("{\"name\":\" \",\"role\":\"curator\"}")
                                .post("/api/v1/accounts"),
                        400,
                        "invalid-field")
                .body("detail", containsString("name"));
    }

    @Test
    void bodiesThatAreTooLarge() {
        isProblem(
                Tokens.as(Tokens.operator())
                        .contentType(ContentType.JSON)
                        .body("{\"name\":\"" + "x".repeat(70_000) + "\"}")
                        .post("/api/v1/accounts"),
                413,
                "body-too-large");
    }

    @Test
    void parametersThatAreUnknownOrOutOfBounds() {
        isProblem(given().get("/api/v1/rooms?colour=green"), 400, "unknown-parameter")
                .body("detail", containsString("limit"));
        isProblem(given().get("/api/v1/rooms?limit=0"), 400, "bad-request").body("detail", containsString("1..1000"));
        isProblem(given().get("/api/v1/rooms?after=%25%25"), 400, "bad-request");
        isProblem(given().get("/api/v1/trials?rhFrom=damp"), 400, "bad-request")
                .body("detail", containsString("rhFrom"));
    }

    @Test
    void everyCodeNamesItsStatusAndTitle() {
        assertThat(ErrorCode.values()).allSatisfy(code -> {
            assertThat(code.status()).isBetween(400, 599);
            assertThat(code.title()).isNotBlank();
        });
    }
}
