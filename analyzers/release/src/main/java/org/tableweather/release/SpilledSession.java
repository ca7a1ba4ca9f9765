package org.tableweather.release;

import java.util.Comparator;
import java.util.List;
import org.tableweather.schema.record.Kind;

/**
 * A session that waits in a temporary file.
 *
 * @param contribution it came with
 * @param roomKey of its room
 * @param sessionKey its own
 * @param digest of its content
 * @param instrument id of its hygrometer in the contribution; empty without
 * @param trials how many
 * @param row the rest of its row in the table of sessions
 * @param parts its trials, by kind and shot
 */
record SpilledSession(
        String contribution,
        String roomKey,
        String sessionKey,
        String digest,
        String instrument,
        int trials,
        Spill.Extent row,
        List<Part> parts) {

    /** The order of sessions wherever they are many. */
    static final Comparator<SpilledSession> ORDER = Comparator.comparing(SpilledSession::roomKey)
            .thenComparing(SpilledSession::sessionKey)
            .thenComparing(SpilledSession::digest)
            .thenComparing(SpilledSession::contribution);

    /** Its id in the contribution: a session's key is the room's, a slash and this. */
    String id() {
        return sessionKey.substring(roomKey.length() + 1);
    }

    /**
     * The trials of one kind and shot.
     *
     * @param kind what they test
     * @param shot id of the shot
     * @param rows how many
     * @param filled columns that all of them fill
     * @param extent where they lie
     */
    record Part(Kind kind, String shot, int rows, long filled, Spill.Extent extent) {}
}
