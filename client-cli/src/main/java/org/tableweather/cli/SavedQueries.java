package org.tableweather.cli;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Map;

/** Filters that a server keeps under a name. */
final class SavedQueries {
    /** Of a deletion. */
    static final BodyPublisher NO_BODY = BodyPublishers.noBody();

    private SavedQueries() {}

    static String path(String name) {
        return "/api/v1/queries/" + ServerClient.encoded(name);
    }

    /**
     * Saves a filter.
     *
     * @return name and version
     */
    static String save(ServerClient server, String name, Map<String, String> filter) throws IOException {
        if (filter.isEmpty()) {
            throw Failure.usage("--save " + name + " has no filter to save", "add one, as --shot or --rh-from");
        }
        if (filter.containsKey("query")) {
            throw Failure.usage(
                    "--save cannot save a --query", "write its filters out: tableweather find queries lists them");
        }
        BodyPublisher body = BodyPublishers.ofString(JsonText.of(Map.of("filter", filter)));
        return server.header("PUT", path(name), Map.of("Content-Type", "application/json"), body, "ETag")
                .orElse(name)
                .replace("\"", "");
    }
}
