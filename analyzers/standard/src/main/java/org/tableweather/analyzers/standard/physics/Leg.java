package org.tableweather.analyzers.standard.physics;

/**
 * Motion of one phase in closed form, until the phase ends by itself.
 *
 * <p>Sliding with slip {@code u = v − Rω×z} at the cloth: acceleration {@code −μg û}, and û keeps its direction because the slip
 * shrinks along itself, {@code |u| = |u₀| − 7/2 μg t}. So the path is a parabola and the phase lasts {@code 2|u₀|/(7μg)}. Rolling:
 * deceleration {@code μ_r g} along the line of travel, for {@code v/(μ_r g)}. Spin about the vertical loses {@code αR} of surface
 * speed a second in every phase and does not push the ball.
 *
 * @param start at time 0
 * @param phase what the ball does
 * @param axMps2 acceleration of the centre, m/s²
 * @param ayMps2 acceleration of the centre, m/s²
 * @param spinLossMps2 of the spin about the vertical, Rω a second, m/s²
 * @param durationS until the phase, or the spin, is over; infinite without friction
 * @param endsSpin whether the spin about the vertical is over first
 * @source Coriolis1835
 */
record Leg(
        BallState start,
        Phase phase,
        double axMps2,
        double ayMps2,
        double spinLossMps2,
        double durationS,
        boolean endsSpin) {

    private static final double SLIP_SHARE = 3.5;
    private static final double SPIN_SHARE = 1 / Ball.INERTIA;

    /** The motion from a state on. */
    static Leg from(BallState start, ClothFriction cloth, Ball ball) {
        Phase phase = Phase.of(start);
        double x = phase == Phase.SLIDING ? start.slipXMps() : start.vxMps();
        double y = phase == Phase.SLIDING ? start.slipYMps() : start.vyMps();
        double speed = Math.sqrt(x * x + y * y);
        double pull = pull(phase, cloth);
        double spinLoss = cloth.spinDecayRadps2() * ball.radiusM();
        double spin = start.spinZMps() == 0 ? Double.POSITIVE_INFINITY : Math.abs(start.spinZMps()) / spinLoss;
        double phaseS = phaseS(phase, speed, pull);
        return new Leg(
                start,
                phase,
                pull == 0 ? 0 : -pull * x / speed,
                pull == 0 ? 0 : -pull * y / speed,
                spinLoss,
                Math.min(phaseS, spin),
                spin < phaseS);
    }

    private static double pull(Phase phase, ClothFriction cloth) {
        return switch (phase) {
            case SLIDING -> cloth.sliding() * ClothFriction.GRAVITY;
            case ROLLING -> cloth.rolling() * ClothFriction.GRAVITY;
            case SPINNING, RESTING -> 0;
        };
    }

    private static double phaseS(Phase phase, double speed, double pull) {
        return switch (phase) {
            case SLIDING -> speed / (SLIP_SHARE * pull);
            case ROLLING -> speed / pull;
            case SPINNING, RESTING -> Double.POSITIVE_INFINITY;
        };
    }

    /** The state after a time within the leg. */
    BallState after(double timeS) {
        double vx = start.vxMps() + axMps2 * timeS;
        double vy = start.vyMps() + ayMps2 * timeS;
        boolean sliding = phase == Phase.SLIDING;
        double lost = Math.min(spinLossMps2 * timeS, Math.abs(start.spinZMps()));
        return new BallState(
                start.xM() + (start.vxMps() + 0.5 * axMps2 * timeS) * timeS,
                start.yM() + (start.vyMps() + 0.5 * ayMps2 * timeS) * timeS,
                vx,
                vy,
                sliding ? start.spinXMps() + SPIN_SHARE * ayMps2 * timeS : -vy,
                sliding ? start.spinYMps() - SPIN_SHARE * axMps2 * timeS : vx,
                start.spinZMps() - Math.copySign(lost, start.spinZMps()));
    }

    /** The state at the end, with what is over set to nought exactly. */
    BallState end() {
        BallState end = after(durationS);
        if (endsSpin) {
            return end.spunOut();
        }
        return phase == Phase.SLIDING ? end.rolling() : end.stopped();
    }

    /** Work that friction under a sliding ball takes in a time, {@code m |a| (|u₀|t − 7/4 |a|t²)}: force times slip, J. */
    double slidingWorkJ(double timeS, Ball ball) {
        if (phase != Phase.SLIDING) {
            return 0;
        }
        double slip = Math.sqrt(square(start.slipXMps()) + square(start.slipYMps()));
        double pull = pull();
        return ball.massKg() * pull * (slip - SLIP_SHARE / 2 * pull * timeS) * timeS;
    }

    /** Work that the resistance to rolling takes in a time, {@code 7/5 m |a| d}, J. */
    double rollingWorkJ(double timeS, Ball ball) {
        if (phase != Phase.ROLLING) {
            return 0;
        }
        double distance = (start.speedMps() - 0.5 * pull() * timeS) * timeS;
        return (1 + Ball.INERTIA) * ball.massKg() * pull() * distance;
    }

    /** Work that the torque against spin about the vertical takes in a time, {@code Iα|Δφ|}, J. */
    double spinWorkJ(double timeS, Ball ball) {
        if (start.spinZMps() == 0) {
            return 0;
        }
        double turned = (Math.abs(start.spinZMps()) - 0.5 * spinLossMps2 * timeS) * timeS;
        return Ball.INERTIA * ball.massKg() * spinLossMps2 * turned;
    }

    private double pull() {
        return Math.sqrt(square(axMps2) + square(ayMps2));
    }

    private static double square(double number) {
        return number * number;
    }
}
