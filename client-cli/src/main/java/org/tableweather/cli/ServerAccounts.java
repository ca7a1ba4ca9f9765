package org.tableweather.cli;

import java.io.IOException;
import java.util.List;
import java.util.Map;

/** Makes accounts and tokens on a server, with an operator's token. */
record ServerAccounts(ServerClient operator) {

    /**
     * Makes an account and its first token.
     *
     * @param name unique on the server
     * @param role {@code contributor}, {@code curator} or {@code operator}
     * @param days how long the token lives
     * @return the token, which the server does not show again
     */
    String add(String name, String role, int days) throws IOException {
        long account = operator.post("/api/v1/accounts", Map.of("name", name, "role", role))
                .path("id")
                .asLong();
        Map<String, Object> token =
                Map.of("account", account, "label", "first token", "scopes", scopes(role), "expiresInDays", days);
        return operator.post("/api/v1/tokens", token).path("token").asText();
    }

    private static List<String> scopes(String role) {
        return switch (role) {
            case "contributor" -> List.of("contribute");
            case "curator" -> List.of("contribute", "curate");
            default -> List.of("contribute", "curate", "operate");
        };
    }
}
