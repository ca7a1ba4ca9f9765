package org.tableweather.server.catalogue;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Trials counted by what their sessions and shots are. */
final class SummaryCounts {
    private static final double RH_STEP_PCT = 10;
    private static final double TEMP_STEP_C = 2;

    private final Set<Integer> sessions = new HashSet<>();
    private final Set<String> contributors = new HashSet<>();
    private final Map<String, Tally> shots = new TreeMap<>();
    private final Map<String, Tally> kinds = new TreeMap<>();
    private final Map<String, Tally> rooms = new TreeMap<>();
    private final Map<String, Tally> countries = new TreeMap<>();
    private final Map<Double, Tally> humidities = new TreeMap<>();
    private final Map<Double, Tally> temperatures = new TreeMap<>();
    private long trials;

    /**
     * What a session counts under.
     *
     * @param id its number
     * @param room key of its room
     * @param country of the room; "unknown" when not stated
     * @param contributor of the room
     * @param rhPct middle of its span; NaN when not known
     * @param tempC middle of its span; NaN when not known
     */
    record Place(int id, String room, String country, String contributor, double rhPct, double tempC) {}

    private static final class Tally {
        private long trials;
        private final Set<Integer> sessions = new HashSet<>();

        void add(int session, long more) {
            trials += more;
            sessions.add(session);
        }
    }

    /** Adds trials of one shot of one session, at least one. */
    void add(Place place, String shot, String kind, long more) {
        trials += more;
        sessions.add(place.id());
        contributors.add(place.contributor());
        tally(shots, shot, place, more);
        tally(kinds, kind, place, more);
        tally(rooms, place.room(), place, more);
        tally(countries, place.country(), place, more);
        bin(humidities, place.rhPct(), RH_STEP_PCT, place, more);
        bin(temperatures, place.tempC(), TEMP_STEP_C, place, more);
    }

    private static <K> void tally(Map<K, Tally> tallies, K key, Place place, long more) {
        tallies.computeIfAbsent(key, any -> new Tally()).add(place.id(), more);
    }

    private static void bin(Map<Double, Tally> bins, double value, double step, Place place, long more) {
        if (!Double.isNaN(value)) {
            tally(bins, step * Math.floor(value / step), place, more);
        }
    }

    long trials() {
        return trials;
    }

    /** The whole, with what was measured. */
    TrialSummary with(List<TrialSummary.Response> responses, long responsesFrom) {
        return new TrialSummary(
                trials,
                sessions.size(),
                rooms.size(),
                contributors.size(),
                counts(shots),
                counts(kinds),
                counts(rooms),
                counts(countries),
                bins(humidities, RH_STEP_PCT),
                bins(temperatures, TEMP_STEP_C),
                responses,
                responsesFrom);
    }

    /** The largest first. */
    private static List<TrialSummary.Count> counts(Map<String, Tally> tallies) {
        return tallies.entrySet().stream()
                .map(entry -> new TrialSummary.Count(
                        entry.getKey(),
                        entry.getValue().trials,
                        entry.getValue().sessions.size()))
                .sorted(Comparator.comparingLong(TrialSummary.Count::trials)
                        .reversed()
                        .thenComparing(TrialSummary.Count::name))
                .toList();
    }

    private static List<TrialSummary.Bin> bins(Map<Double, Tally> tallies, double step) {
        return tallies.entrySet().stream()
                .map(entry -> new TrialSummary.Bin(
                        entry.getKey(),
                        entry.getKey() + step,
                        entry.getValue().trials,
                        entry.getValue().sessions.size()))
                .toList();
    }
}
