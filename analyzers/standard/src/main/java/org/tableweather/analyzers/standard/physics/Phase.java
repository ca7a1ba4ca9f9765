package org.tableweather.analyzers.standard.physics;

/** How a ball moves. */
public enum Phase {
    /** Its lowest point slips over the cloth. */
    SLIDING,
    /** It moves and its lowest point does not slip. */
    ROLLING,
    /** It stands and spins about the vertical. */
    SPINNING,
    /** It stands. */
    RESTING;

    private static final double NO_SLIP = 1e-12;

    /** The phase of a state; slip below 1e-12 of the speeds is rounding. */
    static Phase of(BallState state) {
        double x = state.slipXMps();
        double y = state.slipYMps();
        double scale = Math.abs(state.vxMps())
                + Math.abs(state.vyMps())
                + Math.abs(state.spinXMps())
                + Math.abs(state.spinYMps());
        if (scale > 0 && Math.sqrt(x * x + y * y) > NO_SLIP * scale) {
            return SLIDING;
        }
        if (scale > 0) {
            return ROLLING;
        }
        return state.spinZMps() == 0 ? RESTING : SPINNING;
    }
}
