package org.tableweather.server.analysis;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * One shot in one room, now and usually.
 *
 * @param shot its id
 * @param room key; empty for a room that is not in the pool
 * @param now the air now
 * @param usual what it is held against
 * @param caller who asks
 */
record DriftCase(String shot, String room, DriftQuestion.Air now, DriftQuestion.Air usual, RunCaller caller) {
    /** Changes below this are not told, %RH and K. */
    static final double SMALLEST = 0.5;

    /** Humidity now less usual, %; both to a tenth, as hygrometers show it, so that the same question is the same analysis. */
    double changePct() {
        return rounded(now.rhPct()) - rounded(usual.rhPct());
    }

    /** Temperature now less usual, K. */
    double changeK() {
        return now.tempC() - usual.tempC();
    }

    boolean isAsHumidAsUsual() {
        return Math.abs(changePct()) < SMALLEST;
    }

    boolean isAsWarmAsUsual() {
        return Math.abs(changeK()) < SMALLEST;
    }

    double lowestPct() {
        return Math.min(rounded(now.rhPct()), rounded(usual.rhPct()));
    }

    double highestPct() {
        return Math.max(rounded(now.rhPct()), rounded(usual.rhPct()));
    }

    /** The question to the pooled curve: over this span, or over all humidities where there is none. */
    Map<String, String> asked() {
        Map<String, String> asked = new TreeMap<>(Map.of("shot", shot));
        if (!isAsHumidAsUsual()) {
            asked.put("curve_from_pct", plain(lowestPct()));
            asked.put("curve_to_pct", plain(highestPct()));
        }
        return asked;
    }

    private static double rounded(double rhPct) {
        return Math.round(rhPct * 10) / 10.0;
    }

    private static String plain(double rhPct) {
        return String.format(Locale.ROOT, "%.1f", rhPct);
    }
}
