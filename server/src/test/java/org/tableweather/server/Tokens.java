package org.tableweather.server;

import static io.restassured.RestAssured.given;

import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.config.ConfigProvider;
import org.tableweather.server.datafolder.OwnerOnlyFile;

/** Tokens for tests, made the way an operator makes them. */
public final class Tokens {
    private Tokens() {}

    /** The operator's first token, from its file. */
    public static String operator() {
        String data = ConfigProvider.getConfig().getValue("tableweather.data", String.class);
        try {
            return OwnerOnlyFile.read(Path.of(data, "operator-token"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A new account's number. */
    public static int account(String name, String role) {
        return as(operator())
                .contentType("application/json")
                .body(Map.of("name", name, "role", role))
                .post("/api/v1/accounts")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    /** A token of a new account. */
    public static String of(String name, String role, String... scopes) {
        return as(operator())
                .contentType("application/json")
                .body(Map.of(
                        "account", account(name, role), "label", "test", "scopes", List.of(scopes), "expiresInDays", 1))
                .post("/api/v1/tokens")
                .then()
                .statusCode(201)
                .extract()
                .path("token");
    }

    /** A request that carries a token. */
    public static RequestSpecification as(String token) {
        return given().header("Authorization", "Bearer " + token);
    }
}
