package org.tableweather.server.catalogue;

import java.util.List;
import java.util.Map;

/**
 * How much there is of what a filter asks for.
 *
 * @param trials how many pass
 * @param sessions with such trials
 * @param rooms with such sessions
 * @param contributors of such rooms
 * @param shots trials by shot
 * @param kinds trials by kind
 * @param byRoom trials by room
 * @param countries trials by country of the room; "unknown" where none is stated
 * @param relativeHumidity trials by relative humidity, in steps of 10 %, a session counted where the middle of its span lies
 * @param temperature trials by temperature, in steps of 2 °C, likewise
 * @param responses quantiles of what was measured, by shot
 * @param responsesFrom trials that the quantiles were taken from: all, or a sample of them
 */
record TrialSummary(
        long trials,
        int sessions,
        int rooms,
        int contributors,
        List<Count> shots,
        List<Count> kinds,
        List<Count> byRoom,
        List<Count> countries,
        List<Bin> relativeHumidity,
        List<Bin> temperature,
        List<Response> responses,
        long responsesFrom) {

    /**
     * A part of the trials.
     *
     * @param name what they have in common
     * @param trials how many
     * @param sessions of how many sessions
     */
    record Count(String name, long trials, int sessions) {}

    /**
     * A step of a measure.
     *
     * @param from lower end, which belongs to it
     * @param to upper end, which does not
     * @param trials how many
     * @param sessions of how many sessions
     */
    record Bin(double from, double to, long trials, int sessions) {}

    /**
     * What was measured on one shot.
     *
     * @param shot which
     * @param response which column, by its name in JSON
     * @param trials values that the quantiles were taken from
     * @param quantiles by share of the values below; linear between neighbours
     */
    record Response(String shot, String response, int trials, Map<String, Double> quantiles) {}
}
