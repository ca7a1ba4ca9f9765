package org.tableweather.analyzers.standard.catalogue;

import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** The order in which sessions enter a pool, whatever order they come in: equal sessions give equal bits. */
public final class SessionOrder {

    private SessionOrder() {}

    /** By room, session and content. */
    public static <S> List<SessionSummary<S>> of(List<SessionSummary<S>> sessions) {
        Comparator<SessionSummary<S>> order = Comparator.comparing(SessionSummary::roomKey);
        return sessions.stream()
                .sorted(order.thenComparing(SessionSummary::sessionKey).thenComparing(SessionSummary::digest))
                .toList();
    }
}
