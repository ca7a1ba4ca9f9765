package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.List;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Takes complete sessions, one after the other, from a thread that is not the {@link TrialSink}'s: the next rows are read
 * meanwhile. All calls have ended when the reader returns.
 */
@FunctionalInterface
public interface SessionSink {

    /** Takes no notice. */
    SessionSink NONE = (session, trials) -> {};

    /**
     * Takes one session with all its trials in {@link Trial#CANONICAL_ORDER}. A session whose rows turn out to be
     * scattered over the file is handed over again, complete; the last call stands.
     *
     * @param session the session and what it refers to, with its digest
     * @param trials all its trials so far
     * @throws IOException when it cannot be passed on; the reading ends
     */
    void accept(SessionRecord session, List<Trial> trials) throws IOException;
}
