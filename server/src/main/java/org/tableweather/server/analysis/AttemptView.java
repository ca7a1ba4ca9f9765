package org.tableweather.server.analysis;

import java.time.Instant;
import java.util.Optional;

/**
 * One attempt to make an analysis.
 *
 * @param number from 1 within the run
 * @param state where it stands
 * @param requestedAt when it was asked for
 * @param startedAt when its turn came
 * @param endedAt when it ended, in whatever way
 * @param failure why it failed, or what became of it
 * @param sha256 of the bytes that it made
 * @param sameBytes whether these are the very bytes that the run keeps
 */
record AttemptView(
        int number,
        AttemptState state,
        Instant requestedAt,
        Optional<Instant> startedAt,
        Optional<Instant> endedAt,
        Optional<String> failure,
        Optional<String> sha256,
        Optional<Boolean> sameBytes) {

    /** The same, compared with what the run keeps. */
    AttemptView beside(Optional<String> kept) {
        return new AttemptView(
                number,
                state,
                requestedAt,
                startedAt,
                endedAt,
                failure,
                sha256,
                sha256.map(made -> kept.filter(made::equals).isPresent()));
    }
}
