package org.tableweather.analyzers.standard.physics;

import java.util.Optional;
import org.tableweather.schema.record.Rail;

/**
 * Something that ends a stretch of a ball's path.
 *
 * @param kind what
 * @param timeS since the start, s
 * @param rail which rail, for a contact
 * @param before state just before
 * @param after state just after
 */
public record PathEvent(Kind kind, double timeS, Optional<Rail> rail, BallState before, BallState after) {

    /** What happens. */
    public enum Kind {
        /** The ball begins to roll. */
        SLIDE_ENDS,
        /** A rail is touched. */
        RAIL,
        /** The ball stands. */
        ROLL_ENDS,
        /** Spin about the vertical is over. */
        SPIN_ENDS
    }
}
