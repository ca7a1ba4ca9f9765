package org.tableweather.schema.record;

import java.util.Optional;

/**
 * A session with everything it refers to, as an analyzer sees it.
 *
 * @param roomKey the room's identity over all contributions: contributor key, slash, room id
 * @param sessionKey the session's identity: room key, slash, session id
 * @param digest SHA-256 of the session and its trials in canonical order, hex; two sessions of equal content share it
 * @param invented whether the data are made up for demonstration
 * @param room where
 * @param table which table
 * @param session the session itself
 * @param ballSet which balls
 * @param cue which cue
 * @param instrument which hygrometer
 */
public record SessionRecord(
        String roomKey,
        String sessionKey,
        String digest,
        boolean invented,
        Room room,
        PoolTable table,
        Session session,
        Optional<BallSet> ballSet,
        Optional<Cue> cue,
        Optional<Instrument> instrument) {}
