package org.tableweather.cluster;

import java.io.Serializable;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/**
 * A session's summary on its way from an executor to the driver.
 *
 * @param roomKey which room
 * @param sessionKey which session
 * @param digest of its content
 * @param invented whether made up for demonstration
 * @param trials attempts in it
 * @param json the summary, as {@link SummaryJson} writes it: doubles read back to the same bits
 */
record SummarisedSession(String roomKey, String sessionKey, String digest, boolean invented, long trials, byte[] json)
        implements Serializable {

    static SummarisedSession of(SessionSummary<?> session) {
        return new SummarisedSession(
                session.roomKey(),
                session.sessionKey(),
                session.digest(),
                session.invented(),
                session.trials(),
                SummaryJson.write(session.summary()));
    }

    <S> SessionSummary<S> summary(Class<S> type) {
        return new SessionSummary<>(roomKey, sessionKey, digest, invented, trials, SummaryJson.read(json, type));
    }
}
