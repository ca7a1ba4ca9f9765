package org.tableweather.schema.geometry;

import java.util.function.Function;

/** A homography, or why the marked points give none. */
public sealed interface HomographyFit {

    /** A homography. */
    record Fitted(Homography homography) implements HomographyFit {}

    /**
     * None.
     *
     * @param reason why
     * @param detail which points, and the remedy
     */
    record Refused(Reason reason, String detail) implements HomographyFit {}

    /** Why there is no homography. */
    enum Reason {
        /** Fewer than four points. */
        TOO_FEW_POINTS,
        /** A coordinate or a marking error that is not a number. */
        NOT_FINITE,
        /** The same point twice, on the table or on the frame. */
        SAME_POINT_TWICE,
        /** No four points of which no three lie on one line. */
        ON_ONE_LINE,
        /** No camera sees the points like this: marks are probably exchanged. */
        MARKS_EXCHANGED,
        /** The marks do not fit together at all. */
        NO_FIT
    }

    /** The value for whichever it is. */
    default <R> R fold(Function<? super Fitted, ? extends R> fitted, Function<? super Refused, ? extends R> refused) {
        if (this instanceof Fitted fit) {
            return fitted.apply(fit);
        }
        return refused.apply((Refused) this);
    }
}
