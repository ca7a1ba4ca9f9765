package org.tableweather.cli.demo;

import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;

/**
 * What the invented rebounds off one rail are made from. With {@code h = (RH − 50 %)/10 %} and {@code t = (T − 21 °C)/5 K}, a rail has
 *
 * <pre>{@code
 * restitution   e = e0 + e1·h + ue[room] + we[session]
 * friction  log μ = log m0 + m1·h + m2·t + um[room] + wm[session]
 * }</pre>
 *
 * and a rolling ball leaves it as {@link ClosedFormImpact} says, with scatter of its angle and its speed. Damp cloth on the rail grips
 * more and tightens the rebound: common practice, no source. All figures are invented; of the analyzers this knows the ball alone.
 *
 * @param restitution e0
 * @param restitutionHumidity e1, per 10 %RH
 * @param friction m0
 * @param frictionHumidity m1, per 10 %RH
 * @param frictionTemperature m2, per 5 K
 * @param roomRestitutionSd SD of ue
 * @param roomFrictionSd SD of um
 * @param sessionRestitutionSd SD of we
 * @param sessionFrictionSd SD of wm
 * @param angleSdDeg of the rebound angle, degrees
 * @param ratioSd of speed off over speed on
 */
public record RailTruth(
        double restitution,
        double restitutionHumidity,
        double friction,
        double frictionHumidity,
        double frictionTemperature,
        double roomRestitutionSd,
        double roomFrictionSd,
        double sessionRestitutionSd,
        double sessionFrictionSd,
        double angleSdDeg,
        double ratioSd) {

    /** The truth of the demonstration. */
    public static RailTruth ofTheDemo() {
        return new RailTruth(0.84, -0.006, 0.18, 0.12, -0.04, 0.02, 0.12, 0.004, 0.04, 0.8, 0.012);
    }

    /**
     * What a room or a session adds.
     *
     * @param restitution to e
     * @param logFriction to log μ
     */
    record Departure(double restitution, double logFriction) {

        Departure plus(Departure other) {
            return new Departure(restitution + other.restitution, logFriction + other.logFriction);
        }
    }

    Departure room(SeededDraws draws) {
        return new Departure(draws.normal(roomRestitutionSd), draws.normal(roomFrictionSd));
    }

    Departure session(SeededDraws draws) {
        return new Departure(draws.normal(sessionRestitutionSd), draws.normal(sessionFrictionSd));
    }

    /** A rail in a climate. */
    RailProperties rail(double rhPct, double tempC, Departure departure, double noseSine) {
        double h = Truth.humidityUnits(rhPct);
        double e = restitution + restitutionHumidity * h + departure.restitution();
        double logFriction = StrictMath.log(friction)
                + frictionHumidity * h
                + frictionTemperature * (tempC - 21) / 5
                + departure.logFriction();
        return new RailProperties(RestitutionLaw.constant(e), StrictMath.exp(logFriction), noseSine, 0);
    }

    /**
     * A rolling ball off a rail.
     *
     * @param approachDeg of arrival
     * @param speedMps of arrival
     */
    RailMotion rebound(RailProperties rail, double approachDeg, double speedMps) {
        double angle = Math.toRadians(approachDeg);
        return new ClosedFormImpact(rail)
                .after(RailMotion.rolling(speedMps * StrictMath.sin(angle), speedMps * StrictMath.cos(angle), 0));
    }
}
