package org.tableweather.analyzers.standard.catalogue.guard;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.analyzers.standard.numeric.RowList;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/** Makes the {@link SessionProtocol} of a session from its trials: equal trials give equal bits, in whatever order. */
public final class SessionProtocolBuilder {

    /** Longer numbers are names, not counts of attempts. */
    private static final int MOST_DIGITS = 9;

    private static final Set<TrialNumber> HUMIDITY = Set.of(TrialNumber.CLIMATE_RH_PCT);

    private final SortedMap<String, ToDoubleFunction<Trial>> outcomes;

    /**
     * Starts.
     *
     * @param outcomes how each outcome is read from a trial, by name; NaN when it is not measured
     */
    public SessionProtocolBuilder(Map<String, ToDoubleFunction<Trial>> outcomes) {
        this.outcomes = new TreeMap<>(outcomes);
    }

    /**
     * The protocol.
     *
     * @param session what was stated of it
     * @param trials all its attempts, of whatever shots and kinds, in any order
     */
    public SessionProtocol of(Session session, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        return ofOrdered(session, ordered);
    }

    /**
     * The same.
     *
     * @param session what was stated of it
     * @param ordered all its attempts in {@link Trial#CANONICAL_ORDER}
     */
    public SessionProtocol ofOrdered(Session session, List<Trial> ordered) {
        SortedMap<String, double[]> columns = new TreeMap<>();
        outcomes.forEach((name, reading) ->
                columns.put(name, ordered.stream().mapToDouble(reading).toArray()));
        return of(session, TrialColumns.of(ordered, HUMIDITY), columns);
    }

    /**
     * The protocol of trials in columns.
     *
     * @param session what was stated of it
     * @param trials all its attempts, of whatever shots and kinds, with their humidity
     * @param outcomes of every attempt, by name; NaN where it is not measured
     */
    public static SessionProtocol of(Session session, TrialColumns trials, SortedMap<String, double[]> outcomes) {
        return new SessionProtocol(
                session.startedAt()
                        .map(OffsetDateTime::toEpochSecond)
                        .map(Long::doubleValue)
                        .orElse(Double.NaN),
                session.shooter().orElse(""),
                session.delivery().orElse(""),
                !session.everyAttemptLogged().orElse(true),
                numbering(trials),
                shots(trials, outcomes));
    }

    /** The same of attempts of which nothing else is known. */
    public static SessionProtocol of(TrialColumns trials, SortedMap<String, double[]> outcomes) {
        return new SessionProtocol(Double.NaN, "", "", false, numbering(trials), shots(trials, outcomes));
    }

    /** Numbers come first and ascend. */
    private static Numbering numbering(TrialColumns trials) {
        long numbered = 0;
        long lowest = 0;
        long highest = 0;
        for (int row = 0; row < trials.size(); row++) {
            long number = number(trials.trial(row));
            if (number >= 0 && (numbered == 0 || number != highest)) {
                lowest = numbered == 0 ? number : lowest;
                highest = number;
                numbered++;
            }
        }
        return new Numbering(trials.size(), numbered, lowest, highest);
    }

    /** The number that an id is; −1 when it is a name. */
    private static long number(String id) {
        if (id.isEmpty() || id.length() > MOST_DIGITS) {
            return -1;
        }
        long number = 0;
        for (int i = 0; i < id.length(); i++) {
            int digit = id.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            number = 10 * number + digit;
        }
        return number;
    }

    private static List<ShotProtocol> shots(TrialColumns trials, SortedMap<String, double[]> outcomes) {
        SortedMap<String, RowList> byShot = new TreeMap<>();
        String last = "";
        RowList places = new RowList();
        for (int place = 0; place < trials.size(); place++) {
            String shot = trials.shot(place);
            if (place == 0 || !shot.equals(last)) {
                last = shot;
                places = byShot.computeIfAbsent(shot, id -> new RowList());
            }
            places.add(place);
        }
        List<ShotProtocol> shots = new ArrayList<>();
        byShot.forEach((shot, all) -> shots.add(shot(shot, all.all(), trials, outcomes)));
        return shots;
    }

    private static ShotProtocol shot(
            String shot, int[] places, TrialColumns trials, SortedMap<String, double[]> outcomes) {
        double[] rhPct = trials.numbers(TrialNumber.CLIMATE_RH_PCT);
        List<OutcomeScatter> scatters = new ArrayList<>();
        outcomes.forEach((name, outcome) -> {
            ScatterSums sums = new ScatterSums(places, outcome, rhPct);
            if (sums.n() > 0) {
                scatters.add(sums.named(name));
            }
        });
        long made = 0;
        long missed = 0;
        for (int place : places) {
            made += trials.made(place) == Made.YES ? 1 : 0;
            missed += trials.made(place) == Made.NO ? 1 : 0;
        }
        return new ShotProtocol(shot, made, missed, scatters);
    }
}
