package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What the marked points of one trial say, or why they say nothing. */
public sealed interface PathReduction {

    /**
     * A path that can be believed.
     *
     * @param touches each rail contact in order
     * @param counted how many of them come before the landing: those of the shot when it was followed, else all
     * @param followsShot whether the first contacts are the shot's rails in order; false when no shot was given
     * @param finalReboundAngleDeg departure from the last counted rail, degrees from its normal, signed as in
     *     {@link RailTouch}; empty when the shot was not followed or nothing is marked after that rail
     * @param landing where it came down on the target rail; empty without a target, or when the shot was not followed
     * @param pathLengthM the sum of all marked legs, m
     */
    record Reduced(
            List<RailTouch> touches,
            int counted,
            boolean followsShot,
            Optional<Measured> finalReboundAngleDeg,
            Optional<Landing> landing,
            Measured pathLengthM)
            implements PathReduction {

        public Reduced {
            touches = List.copyOf(touches);
        }
    }

    /**
     * A path that cannot be.
     *
     * @param reason why
     * @param seq number of the offending point; 0 for the path as a whole
     * @param value what was found, with unit
     * @param bound what it breaks, with unit
     * @param remedy what to do
     */
    record Refused(Reason reason, int seq, String value, String bound, String remedy) implements PathReduction {}

    /** Why a path is refused. */
    enum Reason {
        /** Fewer than two points. */
        TOO_FEW_POINTS,
        /** A number used twice, a start in the middle, or a rest before the end. */
        OUT_OF_SEQUENCE,
        /** Neither diamonds nor metres. */
        NO_POSITION,
        /** Diamonds and metres that name different places. */
        TWO_POSITIONS,
        /** A rail contact without the name of its rail. */
        RAIL_NOT_NAMED,
        /** A point where no ball's centre can be. */
        OUTSIDE_THE_BED,
        /** A contact too far from the rail that it names. */
        OFF_ITS_RAIL,
        /** The same rail twice in a row. */
        IMPOSSIBLE_ORDER,
        /** Two points in a row at the same place: no direction. */
        SAME_PLACE,
        /** A time not later than the one before. */
        TIMES_NOT_INCREASING
    }

    /** The value for whichever it is. */
    default <R> R fold(Function<? super Reduced, ? extends R> reduced, Function<? super Refused, ? extends R> refused) {
        if (this instanceof Reduced path) {
            return reduced.apply(path);
        }
        return refused.apply((Refused) this);
    }
}
