package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The sessions of a pool with the outcome that is asked for. */
final class GuardedPool {

    final List<GuardedSession> sessions;
    final String shot;
    final String outcome;

    GuardedPool(List<GuardedSession> sessions, String shot, String outcome) {
        this.sessions = List.copyOf(sessions);
        this.shot = shot;
        this.outcome = outcome;
    }

    Optional<OutcomeScatter> scatter(GuardedSession session) {
        return session.protocol().scatter(shot, outcome);
    }

    /** The outcome in each session that has it. */
    List<OutcomeScatter> scatters() {
        return sessions.stream().map(this::scatter).flatMap(Optional::stream).toList();
    }

    /** Sessions with the outcome and a humidity, by room, in their order. */
    Map<String, List<GuardedSession>> humidByRoom() {
        Map<String, List<GuardedSession>> rooms = new LinkedHashMap<>();
        for (GuardedSession session : sessions) {
            if (scatter(session).filter(known -> !Double.isNaN(known.rhPct())).isPresent()) {
                rooms.computeIfAbsent(session.room(), room -> new ArrayList<>()).add(session);
            }
        }
        return rooms;
    }

    double rhPct(GuardedSession session) {
        return scatter(session).orElseThrow().rhPct();
    }
}
