package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * A list of a server, walked page by page.
 *
 * @param server whose
 * @param name {@code rooms}, {@code sessions}, {@code trials} or {@code contributions}
 * @param filter parameters of the query
 */
record ServerList(ServerClient server, String name, Map<String, String> filter) {
    /** Most rows that a server gives at once. */
    static final int PAGE = 1000;

    String path() {
        return "/api/v1/" + name;
    }

    /**
     * Hands over the rows in order.
     *
     * @param most how many at most
     * @param rows told each
     * @return whether there are more
     */
    boolean read(long most, Consumer<JsonNode> rows) throws IOException {
        long left = most;
        String after = "";
        do {
            Map<String, String> query = new LinkedHashMap<>(filter);
            query.put("limit", Long.toString(Math.min(left, PAGE)));
            if (!after.isEmpty()) {
                query.put("after", after);
            }
            JsonNode page = server.get(path(), query);
            page.path(name).forEach(rows);
            left -= page.path(name).size();
            after = page.path("next").isTextual() ? page.path("next").asText() : "";
        } while (!after.isEmpty() && left > 0);
        return !after.isEmpty();
    }
}
