package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;

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
}
