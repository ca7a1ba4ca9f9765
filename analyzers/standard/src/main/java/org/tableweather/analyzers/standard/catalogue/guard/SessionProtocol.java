package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How a session was shot and written down: the part of a summary that {@link BiasGuards} judges. Any analyzer may keep it
 * beside its own numbers; {@link SessionProtocolBuilder} makes it.
 *
 * @param startedAtS start of the session, seconds since 1970; empty when not stated
 * @param shooter pseudonym; empty when not stated
 * @param delivery {@code ramp} or {@code cue}; empty when not stated
 * @param everyAttemptLogged as stated
 * @param numbering of all attempts
 * @param shots ordered by id
 */
public record SessionProtocol(
        OptionalLong startedAtS,
        String shooter,
        String delivery,
        Optional<Boolean> everyAttemptLogged,
        Numbering numbering,
        List<ShotProtocol> shots) {

    public SessionProtocol {
        shots = List.copyOf(shots);
    }

    /** What is known of a shot. */
    public Optional<ShotProtocol> shot(String id) {
        return shots.stream().filter(each -> each.shot().equals(id)).findFirst();
    }

    /** What is known of an outcome of a shot. */
    public Optional<OutcomeScatter> scatter(String shot, String outcome) {
        return shot(shot).stream()
                .flatMap(each -> each.outcomes().stream())
                .filter(each -> each.outcome().equals(outcome))
                .findFirst();
    }
}
