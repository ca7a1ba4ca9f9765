package org.tableweather.analyzers.standard.physics;

import org.tableweather.schema.geometry.TableSize;

/**
 * Follows a ball from event to event: end of slide, rail contact, end of roll, end of spin. Nothing is stepped, so equal inputs
 * give equal bits and a path costs its number of events.
 *
 * <p>The centre keeps inside the rectangle one radius from the noses; pockets are not looked at. A ball that a rail lifts is put
 * back on the cloth where it stands, and the energy of the hop is booked to the rails.
 *
 * @param table where; its ball diameter is that of the ball
 * @param ball what
 * @param cloth friction
 * @param rails what a rail does
 */
public record BallRun(TableSize table, Ball ball, ClothFriction cloth, RailImpact rails) {

    /**
     * Checks that table and ball fit.
     *
     * @throws IllegalArgumentException when the table's ball is another than the ball
     */
    public BallRun {
        if (table.ballDiameterM() != ball.diameterM()) {
            throw new IllegalArgumentException("the table is laid out for a ball of " + table.ballDiameterM()
                    + " m, the ball has " + ball.diameterM() + " m: give both the same");
        }
    }

    /** Until the ball and its spin are at rest. */
    public BallPath toRest(BallState start) {
        return new RunningBall(this, start, Integer.MAX_VALUE, Double.POSITIVE_INFINITY).run();
    }

    /**
     * Up to a rail contact, which is the last event; its impact is computed.
     *
     * @param contacts how many rails to touch, at least 1; a ball that stops before ends the path
     */
    public BallPath toRails(BallState start, int contacts) {
        return new RunningBall(this, start, contacts, Double.POSITIVE_INFINITY).run();
    }

    /** For a time, s, or until rest. */
    public BallPath forSeconds(BallState start, double seconds) {
        return new RunningBall(this, start, Integer.MAX_VALUE, seconds).run();
    }
}
