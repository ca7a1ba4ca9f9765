package org.tableweather.analyzers.standard.physics;

import java.util.List;
import org.tableweather.schema.record.Rail;

/**
 * The path of a ball.
 *
 * @param start state at time 0
 * @param events in order
 * @param end state at the end
 * @param endS time of the end, s
 * @param ending why the path was followed no further
 * @param energy where the energy went
 */
public record BallPath(
        BallState start, List<PathEvent> events, BallState end, double endS, Ending ending, EnergyBook energy) {

    public BallPath {
        events = List.copyOf(events);
    }

    /** Why a path ends. */
    public enum Ending {
        /** The ball came to rest, its spin included. */
        AT_REST,
        /** As many rails were touched as were asked for. */
        RAILS_TOUCHED,
        /** The time that was asked for is over. */
        TIME_OVER,
        /** Nothing more happens: without friction the ball goes on or spins for ever. */
        NOTHING_MORE,
        /** More events than a path can have: a ball pressed against a rail. */
        TOO_MANY_EVENTS
    }

    /** The contacts with rails, in order. */
    public List<PathEvent> contacts() {
        return events.stream()
                .filter(event -> event.kind() == PathEvent.Kind.RAIL)
                .toList();
    }

    /** The rails in the order touched. */
    public List<Rail> rails() {
        return contacts().stream().map(event -> event.rail().orElseThrow()).toList();
    }
}
