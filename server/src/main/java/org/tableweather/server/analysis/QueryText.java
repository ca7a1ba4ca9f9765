package org.tableweather.server.analysis;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/** Choices as the query of an address. */
final class QueryText {
    private QueryText() {}

    /** {@code shot=kick-3-rail&response=landing_offset_dia}, in the order of the names; empty for no choice. */
    static String of(Map<String, String> chosen) {
        return chosen.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> encoded(entry.getKey()) + "=" + encoded(entry.getValue()))
                .collect(Collectors.joining("&"));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
