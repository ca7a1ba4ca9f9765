package org.tableweather.server.analysis;

import jakarta.validation.constraints.NotBlank;
import java.util.Map;

/**
 * An analysis to be made and kept.
 *
 * @param analyzer id of the analyzer
 * @param parameters values by name
 */
record RunRequest(@NotBlank String analyzer, Map<String, String> parameters) {

    RunRequest {
        parameters = parameters == null ? Map.of() : Map.copyOf(parameters);
    }
}
