package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;
import java.util.Optional;

/**
 * How a session was shot and written down: the part of a summary that {@link BiasGuards} judges. Any analyzer may keep it
 * beside its own numbers; {@link SessionProtocolBuilder} makes it.
 *
 * @param startedAtS start of the session, seconds since 1970; NaN when not stated
 * @param shooter pseudonym; empty when not stated
 * @param delivery {@code ramp} or {@code cue}; empty when not stated
 * @param statedIncomplete whether it says that not every attempt was logged
 * @param numbering of all attempts
 * @param shots ordered by id
 */
public record SessionProtocol(
        double startedAtS,
        String shooter,
        String delivery,
        boolean statedIncomplete,
        Numbering numbering,
        List<ShotProtocol> shots) {

    public SessionProtocol {
        shots = List.copyOf(shots);
    }

    /** What is known of a shot. */
    public Optional<ShotProtocol> shot(String id) {
        for (ShotProtocol each : shots) {
            if (each.shot().equals(id)) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /** What is known of an outcome of a shot. */
    public Optional<OutcomeScatter> scatter(String shot, String outcome) {
        return shot(shot).flatMap(known -> known.outcome(outcome));
    }
}
