package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/**
 * A server's problem details as a failure of the command.
 *
 * @source RFC9457
 */
final class ServerProblem {
    private static final int SHOWN = 200;

    private ServerProblem() {}

    /** What the server said, in words, with the remedy that fits the code. */
    static Failure of(int status, byte[] body, URI server) {
        JsonNode problem = json(body);
        if (problem == null || !problem.has("title")) {
            return Failure.server(
                    server + " answered " + status + " " + shortened(body),
                    "is it a Tableweather server? see --server");
        }
        String title = problem.path("title").asText();
        String detail = problem.path("detail").asText("");
        String code = problem.path("code").asText("");
        String message = "the server refused (" + status + (code.isEmpty() ? "" : " " + code) + "): "
                + (detail.isEmpty() ? title : title + ": " + detail);
        return code.equals("contribution-refused")
                ? Failure.refused(message, "tableweather check PATH shows all findings")
                : Failure.server(message, remedy(status));
    }

    private static String remedy(int status) {
        return switch (status) {
            case 401 -> "give a valid token: --token-file FILE or TABLEWEATHER_TOKEN";
            case 403 -> "use a token with the scope it asks for, of the account that owns the data";
            case 404 -> "tableweather find lists what is there";
            default -> "";
        };
    }

    private static JsonNode json(byte[] body) {
        try {
            return JsonText.tree(body);
        } catch (IOException e) {
            return null;
        }
    }

    private static String shortened(byte[] body) {
        String text =
                new String(body, StandardCharsets.UTF_8).replaceAll("\\s+", " ").strip();
        return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "...";
    }
}
