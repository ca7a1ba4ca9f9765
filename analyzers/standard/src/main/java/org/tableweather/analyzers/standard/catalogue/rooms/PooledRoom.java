package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * One room's usable sessions.
 *
 * @param key names the room
 * @param sessions in the order of their keys, each with a trial
 */
public record PooledRoom(String key, List<PooledSession> sessions) {

    public PooledRoom {
        sessions = List.copyOf(sessions);
    }

    /**
     * The usable trials of a session.
     *
     * @param key names the session
     * @param invented whether it is made up
     * @param corrected whether its climate was corrected by a calibration
     * @param moments of the columns asked for, the response last
     */
    public record PooledSession(String key, boolean invented, boolean corrected, Moments moments) {}

    /** Number of trials. */
    public long trials() {
        return moments().trials();
    }

    /** For the pooled model. */
    RoomSessions moments() {
        return new RoomSessions(
                key, sessions.stream().map(PooledSession::moments).toList());
    }
}
