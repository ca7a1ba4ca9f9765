package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The pooled curves that were asked for last, each by the name of all that went into it, so never out of date. They are kept longer
 * than whole answers, of which a large pool has some ten megabytes each.
 */
@ApplicationScoped
class Curves {
    private static final int KEPT = 1000;

    private final Analyses analyses;
    private final Runs runs;
    private final Map<String, Brief> curves = Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Brief> eldest) {
            return size() > KEPT;
        }
    });

    Curves(Analyses analyses, Runs runs) {
        this.analyses = analyses;
        this.runs = runs;
    }

    /**
     * The curve over what is published now.
     *
     * @throws org.tableweather.server.web.Refusal for an unknown analyzer, parameter or value, or when too many wait
     */
    Brief curve(String analyzer, Map<String, String> parameters, RunCaller caller) {
        String hash = analyses.datasetHash();
        String name = analyses.name(analyzer, parameters, hash);
        Brief known = curves.get(name);
        if (known != null) {
            return known;
        }
        Answer whole = runs.answer(analyzer, parameters, caller);
        Brief curve = Brief.of(whole);
        // something may have been published or withdrawn while it was made
        if (hash.equals(whole.run().dataset().hash())) {
            curves.put(name, curve);
        }
        return curve;
    }
}
