package org.tableweather.schema.record;

import java.util.Optional;

/**
 * One marked point of a ball's path: a row of {@code contacts.csv}.
 *
 * @param session id of the session
 * @param trial id of the trial
 * @param seq order along the path, from 1
 * @param point what happens there
 * @param rail which rail, for a rail contact
 * @param xDia ball centre along the long rail from the head rail, diamonds 0..8; NaN when given in metres
 * @param yDia ball centre across, diamonds 0..4; NaN when given in metres
 * @param xM ball centre along, m; NaN when given in diamonds
 * @param yM ball centre across, m; NaN when given in diamonds
 * @param xPx ball centre on the video frame, pixels to the right; NaN when not marked there
 * @param yPx ball centre on the video frame, pixels downwards; NaN when not marked there
 * @param camera which entry of {@code marks} belongs to the pixels; empty when not stated
 * @param timeS seconds since the first point; NaN when not known
 */
public record Contact(
        String session,
        String trial,
        int seq,
        Point point,
        Optional<Rail> rail,
        double xDia,
        double yDia,
        double xM,
        double yM,
        double xPx,
        double yPx,
        String camera,
        double timeS) {

    /** A point that was marked on the table. */
    public Contact(
            String session,
            String trial,
            int seq,
            Point point,
            Optional<Rail> rail,
            double xDia,
            double yDia,
            double xM,
            double yM,
            double timeS) {
        this(session, trial, seq, point, rail, xDia, yDia, xM, yM, Double.NaN, Double.NaN, "", timeS);
    }

    /** What a marked point is. */
    public enum Point {
        /** Where the path begins. */
        START,
        /** A rail contact. */
        RAIL,
        /** Contact with a ball. */
        BALL,
        /** Where the ball comes to rest, or lands. */
        REST
    }
}
