package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
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
     * @param protocol how it was shot
     * @param moments of the columns asked for, the response last
     */
    public record PooledSession(
            String key, boolean invented, boolean corrected, SessionProtocol protocol, Moments moments) {}

    /** A session as the guards see it. */
    public GuardedSession guarded(PooledSession session) {
        return new GuardedSession(key, session.key(), session.protocol());
    }

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
