package org.tableweather.analyzers.standard.physics;

import org.tableweather.schema.geometry.TablePoint;

/**
 * Where a ball is and how it moves, in the table frame: x along, y across, z up, right-handed. Spin is told as the speed of the
 * ball's surface, {@code Rω}, so that rolling is {@code spinY = vx, spinX = −vy} exactly.
 *
 * @param xM centre, m
 * @param yM centre, m
 * @param vxMps of the centre, m/s
 * @param vyMps of the centre, m/s
 * @param spinXMps Rω about x, m/s
 * @param spinYMps Rω about y, m/s
 * @param spinZMps Rω about the vertical, m/s, positive counter-clockwise from above
 */
public record BallState(
        double xM, double yM, double vxMps, double vyMps, double spinXMps, double spinYMps, double spinZMps) {

    private static final double TURN = 2 * Math.PI;

    /**
     * A ball sent off from a place in a direction.
     *
     * @param from centre
     * @param towards another place
     * @param speedMps of the centre, at least 0
     * @param rollRatio rolling spin over that of natural roll: 0 sliding without spin, 1 rolling, below 0 backspin
     * @param sideSpinRps spin about the vertical, revolutions per second, positive counter-clockwise from above
     * @param ball its size turns revolutions into surface speed
     * @throws IllegalArgumentException when both places are the same, or a number is not finite
     */
    public static BallState sent(
            TablePoint from, TablePoint towards, double speedMps, double rollRatio, double sideSpinRps, Ball ball) {
        double distance = from.distanceM(towards);
        if (!(distance > 0 && speedMps >= 0 && Double.isFinite(distance + speedMps + rollRatio + sideSpinRps))) {
            throw new IllegalArgumentException("a ball needs two places, a speed at least 0 and finite spins, got "
                    + from + ", " + towards + ", " + speedMps + " m/s, " + rollRatio + " and " + sideSpinRps + " /s");
        }
        double vx = speedMps * (towards.xM() - from.xM()) / distance;
        double vy = speedMps * (towards.yM() - from.yM()) / distance;
        double side = TURN * sideSpinRps * ball.radiusM();
        return new BallState(from.xM(), from.yM(), vx, vy, -rollRatio * vy, rollRatio * vx, side);
    }

    /** The centre. */
    public TablePoint place() {
        return new TablePoint(xM, yM);
    }

    /** Speed of the centre, m/s. */
    public double speedMps() {
        return Math.sqrt(vxMps * vxMps + vyMps * vyMps);
    }

    /** Speed along x of the ball's lowest point over the cloth, {@code vx − Rω_y}, m/s. */
    double slipXMps() {
        return vxMps - spinYMps;
    }

    /** Speed along y of the ball's lowest point over the cloth, {@code vy + Rω_x}, m/s. */
    double slipYMps() {
        return vyMps + spinXMps;
    }

    /** Spin about the vertical, revolutions per second. */
    public double sideSpinRps(Ball ball) {
        return spinZMps / (TURN * ball.radiusM());
    }

    /** The same motion at another place. */
    BallState at(double x, double y) {
        return new BallState(x, y, vxMps, vyMps, spinXMps, spinYMps, spinZMps);
    }

    /** At rest but for the spin about the vertical. */
    BallState stopped() {
        return new BallState(xM, yM, 0, 0, 0, 0, spinZMps);
    }

    /** Rolling at the speed of its centre. */
    BallState rolling() {
        return new BallState(xM, yM, vxMps, vyMps, -vyMps, vxMps, spinZMps);
    }

    /** Without spin about the vertical. */
    BallState spunOut() {
        return new BallState(xM, yM, vxMps, vyMps, spinXMps, spinYMps, 0);
    }
}
