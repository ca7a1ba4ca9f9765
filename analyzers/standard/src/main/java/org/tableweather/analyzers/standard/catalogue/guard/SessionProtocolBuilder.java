package org.tableweather.analyzers.standard.catalogue.guard;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
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
     * @param trials all its attempts, of whatever shots and kinds
     */
    public SessionProtocol of(Session session, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        SortedMap<String, List<Integer>> places = new TreeMap<>();
        for (int place = 0; place < ordered.size(); place++) {
            places.computeIfAbsent(ordered.get(place).shot(), shot -> new ArrayList<>())
                    .add(place);
        }
        List<ShotProtocol> shots = new ArrayList<>();
        places.forEach((shot, at) -> shots.add(shot(shot, at, ordered)));
        return new SessionProtocol(
                session.startedAt()
                        .map(OffsetDateTime::toEpochSecond)
                        .map(OptionalLong::of)
                        .orElse(OptionalLong.empty()),
                session.shooter().orElse(""),
                session.delivery().orElse(""),
                session.everyAttemptLogged(),
                numbering(ordered),
                shots);
    }

    private static Numbering numbering(List<Trial> trials) {
        SortedSet<Long> numbers = new TreeSet<>();
        for (Trial trial : trials) {
            if (trial.trial().length() <= MOST_DIGITS && trial.trial().matches("[0-9]+")) {
                numbers.add(Long.parseLong(trial.trial()));
            }
        }
        return numbers.isEmpty()
                ? new Numbering(trials.size(), 0, 0, 0)
                : new Numbering(trials.size(), numbers.size(), numbers.first(), numbers.last());
    }

    private ShotProtocol shot(String shot, List<Integer> places, List<Trial> ordered) {
        List<OutcomeScatter> scatters = new ArrayList<>();
        outcomes.forEach((name, reading) -> {
            ScatterSums sums = new ScatterSums(places, ordered, reading);
            if (sums.n() > 0) {
                scatters.add(sums.named(name));
            }
        });
        return new ShotProtocol(shot, count(places, ordered, Made.YES), count(places, ordered, Made.NO), scatters);
    }

    private static long count(List<Integer> places, List<Trial> ordered, Made which) {
        return places.stream()
                .filter(place -> ordered.get(place).made() == which)
                .count();
    }
}
