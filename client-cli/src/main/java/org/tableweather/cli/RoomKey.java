package org.tableweather.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The whole key of a room that the user may name by its id alone. */
final class RoomKey {
    private RoomKey() {}

    /**
     * The key.
     *
     * @param named a key, or the part after the slash
     * @param server whose rooms
     * @throws Failure when no room, or more than one, has this id
     */
    static String of(String named, ServerClient server) throws IOException {
        if (named.contains("/")) {
            return named;
        }
        List<String> keys = new ArrayList<>();
        new ServerList(server, "rooms", Map.of()).read(Long.MAX_VALUE, row -> {
            String key = row.path("key").asText();
            if (key.endsWith("/" + named)) {
                keys.add(key);
            }
        });
        if (keys.size() == 1) {
            return keys.get(0);
        }
        throw Failure.usage(
                keys.isEmpty() ? "the server has no room " + named : keys.size() + " rooms are called " + named,
                keys.isEmpty() ? "tableweather find rooms lists them" : "name one of: " + String.join(", ", keys));
    }
}
