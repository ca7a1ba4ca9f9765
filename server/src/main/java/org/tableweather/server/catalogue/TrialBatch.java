package org.tableweather.server.catalogue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A few sessions whose trials are read together.
 *
 * @param filter what is asked for
 * @param sessions by number, in order
 */
record TrialBatch(CatalogueFilter filter, Map<Integer, Candidate> sessions) {

    List<Integer> ids() {
        return List.copyOf(sessions.keySet());
    }

    /** Some of the sessions. */
    TrialBatch only(Predicate<Candidate> which) {
        Map<Integer, Candidate> some = new LinkedHashMap<>(sessions);
        some.values().removeIf(which.negate());
        return new TrialBatch(filter, some);
    }

    /** What a trial of these sessions must satisfy, as far as columns tell. */
    Where where() {
        Where where = new Where();
        filter.shots("t").ifPresent(where::and);
        Where each = filter.trials(numbers(session -> filter.isInTime(session.startedAt())));
        if (!each.isEmpty()) {
            Integer[] whole = numbers(Candidate::whole);
            if (whole.length == 0) {
                where.and(each);
            } else if (whole.length < sessions.size()) {
                where.and("t.session_id = ANY ('{" + joined(whole) + "}'::int[]) OR ", each, "");
            }
        }
        return where;
    }

    /** Whether rows must be looked at one by one as well. */
    boolean needsMeasures() {
        return sessions.values().stream().anyMatch(session -> session.traits().isPresent());
    }

    /** Whether a trial passes what no column tells. */
    boolean passes(int session, double tempC, double rhPct) {
        return sessions.get(session).passes(filter.ranges(), tempC, rhPct);
    }

    private Integer[] numbers(Predicate<Candidate> which) {
        return sessions.values().stream().filter(which).map(Candidate::id).toArray(Integer[]::new);
    }

    private static String joined(Integer[] numbers) {
        return String.join(",", Arrays.stream(numbers).map(String::valueOf).toList());
    }
}
