package org.tableweather.server.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.server.TestData;

@QuarkusTest
@QuarkusTestResource(TestData.class)
class InterfaceDescriptionTest {

    @Test
    void everyAddressIsDescribedWithExamples() {
        JsonPath document = given().queryParam("format", "json")
                .get("/api/v1/openapi")
                .then()
                .statusCode(200)
                .body("openapi", equalTo("3.1.0"))
                .body("components.securitySchemes.token.scheme", equalTo("bearer"))
                .extract()
                .jsonPath();
        Map<String, Object> paths = document.getMap("paths");
        assertThat(paths)
                .containsKeys(
                        "/api/v1/contributions",
                        "/api/v1/contributions/{id}/archive",
                        "/api/v1/uploads/{sha256}",
                        "/api/v1/rooms/{key}",
                        "/api/v1/sessions",
                        "/api/v1/trials",
                        "/api/v1/analyzers/{id}/summaries",
                        "/api/v1/analyses",
                        "/api/v1/analyses/{id}",
                        "/api/v1/analyses/{id}/curve",
                        "/api/v1/runs/{id}",
                        "/api/v1/runs/{id}/events",
                        "/api/v1/runs/{id}/rerun",
                        "/api/v1/accounts",
                        "/api/v1/tokens/{id}",
                        "/api/v1/audit")
                .doesNotContainKey("/");
        assertThat(document.getString(
                        "components.responses.Problem.content.'application/problem+json'.examples.limit.value.code"))
                .isEqualTo("bad-request");
        assertThat(
                        document.getString(
                                "paths.'/api/v1/rooms'.get.responses.'200'.content.'application/json'.examples.page.value.rooms[0].country"))
                .isEqualTo("NO");
        assertThat(document.getString("paths.'/api/v1/analyses'.post.responses.'202'.'$ref'"))
                .isEqualTo("#/components/responses/StartedRun");
        assertThat(document.getString(
                        "components.responses.StartedRun.content.'application/json'.examples.queued.value.state"))
                .isEqualTo("queued");
    }

    @Test
    void healthAsksTheDatabase() {
        given().get("/health/ready")
                .then()
                .statusCode(200)
                .body("status", equalTo("UP"))
                .body("checks.name", hasItem("Database connections health check"));
        given().get("/health").then().statusCode(200).body("checks", notNullValue());
    }
}
