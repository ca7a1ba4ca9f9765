package org.tableweather.server.analysis;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** The parameters that an address sets. */
final class Chosen {
    private Chosen() {}

    /**
     * Each parameter with its value.
     *
     * @param query of the address
     * @throws Refusal for a parameter given twice
     */
    static Map<String, String> of(Map<String, List<String>> query) {
        Map<String, String> chosen = new TreeMap<>();
        query.forEach((name, values) -> {
            if (values.size() > 1) {
                throw new Refusal(
                        ErrorCode.BAD_REQUEST,
                        "parameter " + name + " is given " + values.size() + " times: give it once");
            }
            chosen.put(name, values.get(0));
        });
        return chosen;
    }

    /** The same from a form, which sends what was left empty too: that is not set. */
    static Map<String, String> ofForm(Map<String, List<String>> query) {
        Map<String, String> chosen = of(query);
        chosen.values().removeIf(String::isEmpty);
        return chosen;
    }
}
