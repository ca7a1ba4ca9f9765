package org.tableweather.analyzers.host;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a reader calls the rooms of one chart: the room's own id, or its whole key where two share the id. */
final class RoomNames {
    private RoomNames() {}

    /** A name for each key, in the keys' order. */
    static Map<String, String> of(Collection<String> roomKeys) {
        Map<String, Integer> uses = new LinkedHashMap<>();
        roomKeys.forEach(key -> uses.merge(last(key), 1, Integer::sum));
        Map<String, String> names = new LinkedHashMap<>();
        roomKeys.forEach(key -> names.put(key, uses.get(last(key)) == 1 ? last(key) : key));
        return names;
    }

    private static String last(String key) {
        return key.substring(key.lastIndexOf('/') + 1);
    }
}
