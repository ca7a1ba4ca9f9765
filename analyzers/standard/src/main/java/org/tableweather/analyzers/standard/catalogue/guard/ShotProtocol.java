package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;
import java.util.Optional;

/**
 * How one shot fared in a session.
 *
 * @param shot id of the shot
 * @param made attempts stated as made
 * @param missed attempts stated as missed
 * @param outcomes those that some trial has, ordered by name
 */
public record ShotProtocol(String shot, long made, long missed, List<OutcomeScatter> outcomes) {

    public ShotProtocol {
        outcomes = List.copyOf(outcomes);
    }

    /** What is known of an outcome. */
    Optional<OutcomeScatter> outcome(String name) {
        for (OutcomeScatter each : outcomes) {
            if (each.outcome().equals(name)) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }
}
