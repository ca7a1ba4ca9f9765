package org.tableweather.analyzers.standard.catalogue.guard;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/** Makes the {@link SessionProtocol} of a session from its trials: equal trials give equal bits, in whatever order. */
public final class SessionProtocolBuilder {

    /** Longer numbers are names, not counts of attempts. */
    private static final int MOST_DIGITS = 9;

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
        return ofOrdered(session, ordered(trials));
    }

    /**
     * The same.
     *
     * @param session what was stated of it
     * @param ordered all its attempts in {@link Trial#CANONICAL_ORDER}
     */
    public SessionProtocol ofOrdered(Session session, List<Trial> ordered) {
        return new SessionProtocol(
                session.startedAt()
                        .map(OffsetDateTime::toEpochSecond)
                        .map(Long::doubleValue)
                        .orElse(Double.NaN),
                session.shooter().orElse(""),
                session.delivery().orElse(""),
                !session.everyAttemptLogged().orElse(true),
                numbering(ordered),
                shots(ordered));
    }

    /** The protocol of attempts in {@link Trial#CANONICAL_ORDER}, of which nothing else is known. */
    public SessionProtocol ofOrdered(List<Trial> ordered) {
        return new SessionProtocol(Double.NaN, "", "", false, numbering(ordered), shots(ordered));
    }

    private static List<Trial> ordered(Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        return ordered;
    }

    /** Numbers come first and ascend. */
    private static Numbering numbering(List<Trial> ordered) {
        long numbered = 0;
        long lowest = 0;
        long highest = 0;
        for (Trial trial : ordered) {
            long number = number(trial.trial());
            if (number >= 0 && (numbered == 0 || number != highest)) {
                lowest = numbered == 0 ? number : lowest;
                highest = number;
                numbered++;
            }
        }
        return new Numbering(ordered.size(), numbered, lowest, highest);
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

    private List<ShotProtocol> shots(List<Trial> ordered) {
        SortedMap<String, List<Attempt>> byShot = new TreeMap<>();
        String last = "";
        List<Attempt> attempts = List.of();
        for (int place = 0; place < ordered.size(); place++) {
            Trial trial = ordered.get(place);
            if (attempts.isEmpty() || !trial.shot().equals(last)) {
                last = trial.shot();
                attempts = byShot.computeIfAbsent(last, shot -> new ArrayList<>());
            }
            attempts.add(new Attempt(place, trial));
        }
        List<ShotProtocol> shots = new ArrayList<>();
        byShot.forEach((shot, all) -> shots.add(shot(shot, all)));
        return shots;
    }

    /**
     * An attempt and its place in the session.
     *
     * @param place from 0
     * @param trial the attempt
     */
    record Attempt(int place, Trial trial) {}

    private ShotProtocol shot(String shot, List<Attempt> attempts) {
        List<OutcomeScatter> scatters = new ArrayList<>();
        outcomes.forEach((name, reading) -> {
            ScatterSums sums = new ScatterSums(attempts, reading);
            if (sums.n() > 0) {
                scatters.add(sums.named(name));
            }
        });
        long made = 0;
        long missed = 0;
        for (Attempt attempt : attempts) {
            made += attempt.trial().made() == Made.YES ? 1 : 0;
            missed += attempt.trial().made() == Made.NO ? 1 : 0;
        }
        return new ShotProtocol(shot, made, missed, scatters);
    }
}
