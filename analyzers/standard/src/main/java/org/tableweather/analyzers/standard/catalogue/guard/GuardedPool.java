package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The sessions of a pool with the outcome that is asked for. */
final class GuardedPool {

    final List<GuardedSession> sessions;
    final String shot;
    final String outcome;

    /** The outcome in each session that has it, in their order; a session is itself alone. */
    private final Map<GuardedSession, OutcomeScatter> known = new IdentityHashMap<>();

    private final List<OutcomeScatter> scatters = new ArrayList<>();
    private final Map<String, List<GuardedSession>> humid = new LinkedHashMap<>();

    GuardedPool(List<GuardedSession> sessions, String shot, String outcome) {
        this.sessions = List.copyOf(sessions);
        this.shot = shot;
        this.outcome = outcome;
        for (GuardedSession session : this.sessions) {
            session.protocol().scatter(shot, outcome).ifPresent(scatter -> keep(session, scatter));
        }
    }

    private void keep(GuardedSession session, OutcomeScatter scatter) {
        known.put(session, scatter);
        scatters.add(scatter);
        if (!Double.isNaN(scatter.rhPct())) {
            humid.computeIfAbsent(session.room(), room -> new ArrayList<>()).add(session);
        }
    }

    Optional<OutcomeScatter> scatter(GuardedSession session) {
        return Optional.ofNullable(known.get(session));
    }

    /** The outcome in each session that has it. */
    List<OutcomeScatter> scatters() {
        return Collections.unmodifiableList(scatters);
    }

    /** Sessions with the outcome and a humidity, by room, in their order. */
    Map<String, List<GuardedSession>> humidByRoom() {
        return Collections.unmodifiableMap(humid);
    }

    double rhPct(GuardedSession session) {
        return known.get(session).rhPct();
    }
}
