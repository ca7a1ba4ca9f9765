package org.tableweather.analyzers.standard.physics;

import org.tableweather.schema.record.Rail;

/**
 * Turns the table's frame into a rail's and back, exactly: quarter turns only.
 *
 * @param intoX component of the direction into the rail along x: −1, 0, 1
 * @param intoY along y
 */
record RailAxes(int intoX, int intoY) {

    static RailAxes of(Rail rail) {
        return switch (rail) {
            case HEAD -> new RailAxes(-1, 0);
            case FOOT -> new RailAxes(1, 0);
            case NEAR -> new RailAxes(0, -1);
            case FAR -> new RailAxes(0, 1);
        };
    }

    RailMotion motion(BallState state) {
        return new RailMotion(
                along(state.vxMps(), state.vyMps()),
                into(state.vxMps(), state.vyMps()),
                0,
                along(state.spinXMps(), state.spinYMps()),
                into(state.spinXMps(), state.spinYMps()),
                state.spinZMps());
    }

    /** The state at a place with this motion over the bed; what goes up is left out. */
    BallState state(BallState at, RailMotion motion) {
        return new BallState(
                at.xM(),
                at.yM(),
                x(motion.alongMps(), motion.intoMps()),
                y(motion.alongMps(), motion.intoMps()),
                x(motion.spinAlongMps(), motion.spinIntoMps()),
                y(motion.spinAlongMps(), motion.spinIntoMps()),
                motion.spinUpMps());
    }

    private double into(double x, double y) {
        return intoX * x + intoY * y;
    }

    private double along(double x, double y) {
        return intoY * x - intoX * y;
    }

    private double x(double along, double into) {
        return intoX * into + intoY * along;
    }

    private double y(double along, double into) {
        return intoY * into - intoX * along;
    }
}
