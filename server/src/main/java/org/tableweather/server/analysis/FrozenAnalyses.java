package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.server.catalogue.PublishedSession;

/** Analyses over a fixed set of sessions, whether they are still published or not. */
@ApplicationScoped
public class FrozenAnalyses {
    private final Analyses analyses;

    FrozenAnalyses(Analyses analyses) {
        this.analyses = analyses;
    }

    /**
     * The answer as JSON, the very bytes that the command prints for the same sessions.
     *
     * @param analyzer id
     * @param query parameters, each once
     * @param sessions over which
     * @throws org.tableweather.server.web.Refusal for an unknown analyzer, parameter or value
     */
    public byte[] answer(String analyzer, Map<String, List<String>> query, List<PublishedSession> sessions) {
        return AnalysisJson.bytes(analyses.run(analyzer, Chosen.of(query), sessions));
    }
}
