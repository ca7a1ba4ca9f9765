package org.tableweather.server.analysis;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.tableweather.server.web.Words;

/**
 * A run in a list of runs.
 *
 * @param id of it
 * @param name analyzer and what is set
 * @param state where it stands
 * @param asked when it was asked for
 * @param sessions that went in
 * @param done whether there is a result
 */
record RunLine(String id, String name, String state, String asked, String sessions, boolean done) {

    static RunLine of(KeptRuns.Listed run) {
        return new RunLine(
                run.id(),
                name(run.analyzer(), run.parameters()),
                run.state().schemaName(),
                Words.minute(Optional.of(run.requestedAt())),
                Words.counted(run.dataset().sessions(), "session"),
                run.result().isPresent());
    }

    /** Analyzer and what is set, in a line. */
    static String name(String analyzer, Map<String, String> parameters) {
        String set = parameters.entrySet().stream()
                .filter(parameter -> !parameter.getValue().isEmpty())
                .map(parameter -> parameter.getKey() + "=" + parameter.getValue())
                .collect(Collectors.joining(", "));
        return set.isEmpty() ? analyzer : analyzer + ": " + set;
    }
}
