package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.RunId;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Runs analyzers over what is published. */
@ApplicationScoped
class Analyses {
    private static final int WITHDRAWN_TOLD = 20;

    private final Analyzers analyzers;
    private final PublishedSessions published;
    private final Catalogue catalogue;
    private final Map<String, SummaryCache<?>> caches = new TreeMap<>();
    private volatile Published latest = new Published("", "");

    /** A state of the catalogue, and the name of the sessions that were published then. */
    private record Published(String state, String hash) {}

    Analyses(Analyzers analyzers, Catalogue catalogue, PublishedSessions published, StoredSummaries stored) {
        this.analyzers = analyzers;
        this.published = published;
        this.catalogue = catalogue;
        for (Analyzer<?> analyzer : analyzers.all()) {
            caches.put(analyzer.info().id(), new SummaryCache<>(analyzer, catalogue, published, stored));
        }
    }

    /**
     * Runs an analyzer.
     *
     * @param id which
     * @param set parameter values by name
     * @throws Refusal for an unknown analyzer, parameter or value
     */
    AnalysisRun run(String id, Map<String, String> set) {
        return run(analyzers.find(id), set);
    }

    private <S> AnalysisRun run(Analyzer<S> analyzer, Map<String, String> set) {
        checkNames(analyzer, set);
        return conclude(analyzer, summaries(analyzer), set, Progress.Listener.NONE);
    }

    /**
     * Runs an analyzer over these sessions, published or not.
     *
     * @throws Refusal for an unknown analyzer, parameter or value
     */
    AnalysisRun run(String id, Map<String, String> set, List<PublishedSession> sessions) {
        return run(analyzers.find(id), set, sessions);
    }

    private <S> AnalysisRun run(Analyzer<S> analyzer, Map<String, String> set, List<PublishedSession> sessions) {
        checkNames(analyzer, set);
        return conclude(
                analyzer, cache(analyzer).ofSessions(sessions, Progress.Listener.NONE), set, Progress.Listener.NONE);
    }

    private static <S> AnalysisRun conclude(
            Analyzer<S> analyzer, Summaries<S> summaries, Map<String, String> set, Progress.Listener listener) {
        try {
            return AnalysisRun.conclude(
                    analyzer,
                    summaries,
                    set,
                    (what, done, total) -> listener.at(Progress.concluding(what, done, total)));
        } catch (IllegalArgumentException e) {
            throw new Refusal(ErrorCode.BAD_REQUEST, e.getMessage());
        }
    }

    private static Parameters checkNames(Analyzer<?> analyzer, Map<String, String> set) {
        try {
            return Parameters.of(analyzer.info(), set);
        } catch (IllegalArgumentException e) {
            boolean known = analyzer.info().parameters().stream()
                    .anyMatch(parameter -> e.getMessage().startsWith("parameter " + parameter.name() + " = "));
            throw new Refusal(known ? ErrorCode.BAD_REQUEST : ErrorCode.UNKNOWN_PARAMETER, e.getMessage());
        }
    }

    /**
     * Names the answer of an analyzer over these sessions, by all that goes into it.
     *
     * @param hash names the sessions
     * @throws Refusal for an unknown analyzer, parameter or value
     */
    String name(String id, Map<String, String> set, String hash) {
        Analyzer<?> analyzer = analyzers.find(id);
        return RunId.of(analyzer.info(), checkNames(analyzer, set), hash);
    }

    /** Names the set of sessions that are published now: read anew only after a change. */
    String datasetHash() {
        // asked for first: what changes meanwhile is seen at the next call at the latest
        String state = catalogue.state();
        Published now = latest;
        if (!now.state().equals(state)) {
            now = new Published(state, Summaries.hash(published.digests()));
            latest = now;
        }
        return now.hash();
    }

    /** The summaries of what is published now. */
    Summaries<?> summaries(String id) {
        return summaries(analyzers.find(id));
    }

    private <S> Summaries<S> summaries(Analyzer<S> analyzer) {
        return cache(analyzer).current(Progress.Listener.NONE);
    }

    @SuppressWarnings("unchecked") // the cache of an analyzer is made with that analyzer
    private <S> SummaryCache<S> cache(Analyzer<S> analyzer) {
        return (SummaryCache<S>) caches.get(analyzer.info().id());
    }

    /**
     * All that goes into an analysis of what is published now.
     *
     * @throws Refusal for an unknown analyzer, parameter or value
     */
    RunInputs inputs(String id, Map<String, String> set) {
        Analyzer<?> analyzer = analyzers.find(id);
        return RunInputs.of(analyzer.info(), checkNames(analyzer, set), published.digests());
    }

    /**
     * Makes the analysis that these inputs name.
     *
     * @param listener hears of progress
     * @throws Refusal as {@link #mustBePossible}
     */
    AnalysisRun run(RunInputs inputs, Progress.Listener listener) {
        return run(analyzer(inputs), inputs, listener);
    }

    private <S> AnalysisRun run(Analyzer<S> analyzer, RunInputs inputs, Progress.Listener listener) {
        Summaries<S> summaries = summaries(analyzer, inputs, listener);
        listener.at(Progress.concluding());
        return conclude(analyzer, summaries, inputs.parameters(), listener);
    }

    /** The summaries of the recorded sessions. */
    Summaries<?> summaries(RunInputs inputs, Progress.Listener listener) {
        return summaries(analyzer(inputs), inputs, listener);
    }

    private <S> Summaries<S> summaries(Analyzer<S> analyzer, RunInputs inputs, Progress.Listener listener) {
        Summaries<S> summaries = cache(analyzer).of(new HashSet<>(inputs.digests()), listener);
        if (summaries.sessions().size() < inputs.digests().size()) {
            mustBePublished(inputs);
        }
        return summaries;
    }

    /**
     * Whether the very same analysis can be made here now.
     *
     * @throws Refusal when its analyzer has another version here, or sessions were withdrawn
     */
    void mustBePossible(RunInputs inputs) {
        analyzer(inputs);
        mustBePublished(inputs);
    }

    private Analyzer<?> analyzer(RunInputs inputs) {
        Optional<AnalyzerInfo> here = analyzers.infos().stream()
                .filter(info -> info.id().equals(inputs.analyzer()))
                .findFirst();
        if (here.filter(info -> info.version().equals(inputs.version())).isEmpty()) {
            String now = here.map(info -> "version " + info.version()).orElse("no such analyzer");
            throw new Refusal(
                    ErrorCode.ANALYZER_CHANGED,
                    "run " + inputs.id() + " was made by " + inputs.analyzer() + " " + inputs.version()
                            + ", this server has " + now + ": its kept result stays; POST /api/v1/analyses asks anew");
        }
        return analyzers.find(inputs.analyzer());
    }

    private void mustBePublished(RunInputs inputs) {
        List<String> missing = notPublished(inputs.digests());
        if (!missing.isEmpty()) {
            throw new Refusal(
                            ErrorCode.SESSIONS_WITHDRAWN,
                            missing.size() + " of the " + inputs.digests().size() + " sessions of run " + inputs.id()
                                    + " were withdrawn: it cannot be made again, its kept result stays;"
                                    + " POST /api/v1/analyses asks about what is published now")
                    .with("withdrawn", missing.stream().limit(WITHDRAWN_TOLD).toList());
        }
    }

    /** Which of these sessions are not published now. */
    List<String> notPublished(List<String> digests) {
        Set<String> now = new HashSet<>(published.digests());
        return digests.stream().filter(digest -> !now.contains(digest)).toList();
    }
}
