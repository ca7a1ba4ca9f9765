package org.tableweather.analyzers.standard.statistics;

import java.util.List;

/**
 * One room's sessions, each by its moments; the last column is the response, the others the covariates.
 *
 * @param key names the room
 * @param sessions in an order that does not change from run to run
 */
public record RoomSessions(String key, List<Moments> sessions) {

    public RoomSessions {
        sessions = List.copyOf(sessions);
    }

    /** Number of rows in all sessions. */
    public long trials() {
        return sessions.stream().mapToLong(Moments::n).sum();
    }

    /** The room's rows as one. */
    public Moments merged() {
        return Moments.merged(sessions);
    }
}
