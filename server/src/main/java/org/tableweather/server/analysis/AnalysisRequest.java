package org.tableweather.server.analysis;

import java.util.Map;

/**
 * What is asked of an analyzer.
 *
 * @param parameters values by name
 */
record AnalysisRequest(Map<String, String> parameters) {

    AnalysisRequest {
        parameters = parameters == null ? Map.of() : Map.copyOf(parameters);
    }
}
