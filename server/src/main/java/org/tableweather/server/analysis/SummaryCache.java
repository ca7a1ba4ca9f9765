package org.tableweather.server.analysis;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.catalogue.PublishedSessions;

/**
 * The summaries of one analyzer for all that is published: in memory while nothing changes; after a change only what is
 * new is read from the database, and only what was never summarised is summarised.
 *
 * @param <S> the analyzer's summary
 */
final class SummaryCache<S> {
    private static final int STORED_AT_ONCE = 500;

    private final Analyzer<S> analyzer;
    private final Catalogue catalogue;
    private final PublishedSessions published;
    private final StoredSummaries stored;
    private Map<Integer, SessionSummary<S>> bySession = Map.of();
    private Summaries<S> source = Summaries.of(List.of());
    private String state = "";

    SummaryCache(Analyzer<S> analyzer, Catalogue catalogue, PublishedSessions published, StoredSummaries stored) {
        this.analyzer = analyzer;
        this.catalogue = catalogue;
        this.published = published;
        this.stored = stored;
    }

    /**
     * The summaries of what is published now.
     *
     * @param listener hears how many sessions of those that were never summarised are summarised
     */
    synchronized Summaries<S> current(Progress.Listener listener) {
        // asked for first: what changes meanwhile is seen at the next call at the latest
        String now = catalogue.state();
        if (!now.equals(state)) {
            refresh(listener);
            state = now;
        }
        return source;
    }

    /** The summaries of these sessions; fewer when some are no longer published. */
    Summaries<S> of(Set<String> digests, Progress.Listener listener) {
        Summaries<S> all = current(listener);
        List<SessionSummary<S>> wanted = all.sessions().stream()
                .filter(session -> digests.contains(session.digest()))
                .toList();
        return wanted.size() == all.sessions().size() ? all : Summaries.of(wanted);
    }

    /** The summaries of exactly these sessions, published or not; nothing more is kept in memory for it. */
    synchronized Summaries<S> ofSessions(List<PublishedSession> sessions, Progress.Listener listener) {
        return Summaries.of(found(sessions, listener).values());
    }

    private void refresh(Progress.Listener listener) {
        Map<Integer, SessionSummary<S>> fresh = found(published.all(), listener);
        bySession = fresh;
        source = Summaries.of(fresh.values());
    }

    private Map<Integer, SessionSummary<S>> found(List<PublishedSession> sessions, Progress.Listener listener) {
        Map<Integer, SessionSummary<S>> fresh = new LinkedHashMap<>();
        Map<Integer, PublishedSession> unknown = new LinkedHashMap<>();
        for (PublishedSession session : sessions) {
            SessionSummary<S> known = bySession.get(session.id());
            if (known == null) {
                unknown.put(session.id(), session);
            } else {
                fresh.put(session.id(), known);
            }
        }
        stored.load(analyzer.info(), unknown.keySet())
                .forEach((id, json) -> fresh.put(id, summary(unknown.remove(id), json)));
        summarise(unknown, fresh, listener);
        return fresh;
    }

    private void summarise(
            Map<Integer, PublishedSession> unknown, Map<Integer, SessionSummary<S>> into, Progress.Listener listener) {
        Map<Integer, byte[]> toStore = new HashMap<>();
        int[] done = {0};
        listener.at(Progress.summarising(0, unknown.size()));
        published.read(unknown.values(), (id, session, trials) -> {
            byte[] json = SummaryJson.write(analyzer.summarise(session, trials));
            toStore.put(id, json);
            // read back even now: fresh and kept summaries must not differ in a bit
            into.put(id, summary(unknown.get(id), json));
            if (toStore.size() >= STORED_AT_ONCE) {
                stored.store(analyzer.info(), toStore);
                toStore.clear();
            }
            listener.at(Progress.summarising(++done[0], unknown.size()));
        });
        stored.store(analyzer.info(), toStore);
    }

    private SessionSummary<S> summary(PublishedSession session, byte[] json) {
        return new SessionSummary<>(
                session.roomKey(),
                session.sessionKey(),
                session.digest(),
                session.invented(),
                session.trials(),
                SummaryJson.read(json, analyzer.summaryType()));
    }
}
