package org.tableweather.analyzers.standard.catalogue.rail;

import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.PublishedRange;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.analyzers.standard.physics.SteppedImpact;
import org.tableweather.analyzers.standard.statistics.nonlinear.ResponseCell.Mean;

/**
 * What a ball does at a rail: rebound angle in degrees, and where it was measured speed off over speed on, from restitution and the logarithm
 * of friction.
 *
 * @param approachDeg angle of arrival
 * @param speedMps of arrival
 * @param roll rolling spin over that of natural roll
 * @param noseSine of the rail
 * @param stepped which impact
 * @param withRatio whether the ratio of speeds is among the responses
 */
record RailResponse(
        double approachDeg, double speedMps, double roll, double noseSine, boolean stepped, boolean withRatio)
        implements Mean {

    private static final int STEPS = 50;
    private static final double STEP = 2e-2;
    /** Part of the friction that would wedge the ball. */
    private static final double BELOW_WEDGE = 0.95;

    @Override
    public double[] at(double[] parameters) {
        RailMotion before = arriving();
        RailMotion after =
                impact(rail(parameters[0], parameters[1], noseSine), stepped).after(before);
        double angle = Math.toDegrees(StrictMath.atan2(after.alongMps(), -after.intoMps()));
        return withRatio ? new double[] {angle, after.speedMps() / before.speedMps()} : new double[] {angle};
    }

    /** Wide enough to smooth the kink where slip comes to an end, and the small jumps of the stepped impact. */
    @Override
    public double step() {
        return STEP;
    }

    /** ∂(rebound angle)/∂(approach angle). */
    double angleSlope(double[] parameters) {
        double up = turned(0.5).at(parameters)[0];
        double down = turned(-0.5).at(parameters)[0];
        return up - down;
    }

    /** ∂(ratio of speeds)/∂(approach angle), 1/degree. */
    double ratioSlope(double[] parameters) {
        return turned(0.5).at(parameters)[1] - turned(-0.5).at(parameters)[1];
    }

    private RailResponse turned(double byDeg) {
        return new RailResponse(approachDeg + byDeg, speedMps, roll, noseSine, stepped, withRatio);
    }

    private RailMotion arriving() {
        double angle = Math.toRadians(approachDeg);
        double along = speedMps * StrictMath.sin(angle);
        double into = speedMps * StrictMath.cos(angle);
        return new RailMotion(along, into, 0, -roll * into, roll * along, 0);
    }

    /** Speed across the rail, m/s. */
    double acrossMps() {
        return speedMps * StrictMath.cos(Math.toRadians(approachDeg));
    }

    static RailProperties rail(double restitution, double logFriction, double noseSine) {
        double wedging = Math.sqrt(1 - noseSine * noseSine) / noseSine;
        return new RailProperties(
                RestitutionLaw.constant(restitution),
                Math.min(StrictMath.exp(logFriction), BELOW_WEDGE * wedging),
                noseSine,
                PublishedRange.CLOTH_SLIDING.typical);
    }

    static RailImpact impact(RailProperties rail, boolean stepped) {
        return stepped ? new SteppedImpact(rail, STEPS) : new ClosedFormImpact(rail);
    }
}
