package org.tableweather.analyzers.spi;

import java.util.List;

/**
 * The summaries of the sessions to conclude over.
 *
 * @param <S> an analyzer's summary
 */
public interface SummarySource<S> {

    /**
     * One session's summary.
     *
     * @param roomKey which room; sessions of one room share it
     * @param sessionKey unique among the summaries
     * @param digest of the session's content
     * @param invented whether the data are made up for demonstration
     * @param trials attempts in the session
     * @param summary what the analyzer kept
     */
    record SessionSummary<S>(
            String roomKey, String sessionKey, String digest, boolean invented, long trials, S summary) {}

    /** All summaries, ordered by room key, then session key, then digest. */
    List<SessionSummary<S>> sessions();

    /** {@code sha256:} and the hash of the sorted session digests: names the exact set of sessions. */
    String hash();
}
