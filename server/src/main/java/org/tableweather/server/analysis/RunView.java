package org.tableweather.server.analysis;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A run: an analysis named by what goes into it, its kept result, and the attempts to make it.
 *
 * @param id SHA-256 over analyzer, version, parameters and dataset
 * @param state {@code done} as soon as a result is kept, else that of the latest attempt
 * @param analyzer id
 * @param version of the analyzer
 * @param parameters complete, by name
 * @param dataset which sessions
 * @param requestedAt when it was first asked for
 * @param progress of the attempt that is being made
 * @param result the kept bytes
 * @param attempts the latest ones, oldest first
 * @param sessions path of the recorded set of sessions
 * @param summaries path of their summaries
 * @param events path of the stream of states
 */
record RunView(
        String id,
        AttemptState state,
        String analyzer,
        String version,
        Map<String, String> parameters,
        Dataset dataset,
        Instant requestedAt,
        Optional<Progress> progress,
        Optional<Result> result,
        List<AttemptView> attempts,
        String sessions,
        String summaries,
        String events) {

    /**
     * Which sessions went in.
     *
     * @param hash names the set
     * @param sessions how many
     */
    record Dataset(String hash, int sessions) {}

    /**
     * The kept bytes.
     *
     * @param sha256 of them
     * @param bytes how many
     * @param address path of them
     */
    record Result(String sha256, int bytes, String address) {}

    /** Where a run is found. */
    static String path(String id) {
        return "/api/v1/runs/" + id;
    }

    AttemptView latest() {
        return attempts.get(attempts.size() - 1);
    }

    /** Whether an attempt waits or is being made. */
    boolean isActive() {
        return latest().state().isActive();
    }

    RunView with(Progress now) {
        return new RunView(
                id,
                state,
                analyzer,
                version,
                parameters,
                dataset,
                requestedAt,
                Optional.of(now),
                result,
                attempts,
                sessions,
                summaries,
                events);
    }
}
