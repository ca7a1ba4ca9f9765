package org.tableweather.analyzers.standard.catalogue.guard;

/**
 * A session of a pool, as the guards see it.
 *
 * @param room key of its room
 * @param session key of the session
 * @param protocol how it was shot
 */
public record GuardedSession(String room, String session, SessionProtocol protocol) {}
