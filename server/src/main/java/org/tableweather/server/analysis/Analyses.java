package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.TreeMap;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Runs analyzers over what is published. */
@ApplicationScoped
class Analyses {
    private final Analyzers analyzers;
    private final Map<String, SummaryCache<?>> caches = new TreeMap<>();

    Analyses(Analyzers analyzers, Catalogue catalogue, PublishedSessions published, StoredSummaries stored) {
        this.analyzers = analyzers;
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
        Summaries<S> summaries = summaries(analyzer);
        try {
            return AnalysisRun.conclude(analyzer, summaries, set);
        } catch (IllegalArgumentException e) {
            throw new Refusal(ErrorCode.BAD_REQUEST, e.getMessage());
        }
    }

    private static void checkNames(Analyzer<?> analyzer, Map<String, String> set) {
        try {
            Parameters.of(analyzer.info(), set);
        } catch (IllegalArgumentException e) {
            boolean known = analyzer.info().parameters().stream()
                    .anyMatch(parameter -> e.getMessage().startsWith("parameter " + parameter.name() + " = "));
            throw new Refusal(known ? ErrorCode.BAD_REQUEST : ErrorCode.UNKNOWN_PARAMETER, e.getMessage());
        }
    }

    /** The summaries of what is published now. */
    Summaries<?> summaries(String id) {
        return summaries(analyzers.find(id));
    }

    @SuppressWarnings("unchecked") // the cache of an analyzer is made with that analyzer
    private <S> Summaries<S> summaries(Analyzer<S> analyzer) {
        return ((SummaryCache<S>) caches.get(analyzer.info().id())).current();
    }
}
