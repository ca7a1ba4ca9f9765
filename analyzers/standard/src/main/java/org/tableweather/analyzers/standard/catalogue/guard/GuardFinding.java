package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A guard that has struck.
 *
 * @param guard which
 * @param statistic what it measured
 * @param bound what it must not pass
 * @param detail with figures, in words
 */
public record GuardFinding(Guard guard, double statistic, double bound, String detail) {

    /** What was found and what helps: one warning. */
    public String words() {
        String remedy = guard.remedy();
        return detail + " Remedy: " + remedy + ".";
    }

    /** As data. */
    public Map<String, Object> facts() {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("guard", guard.id());
        facts.put("statistic", statistic);
        facts.put("bound", bound);
        return facts;
    }
}
