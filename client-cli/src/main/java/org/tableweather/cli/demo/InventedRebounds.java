package org.tableweather.cli.demo;

import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.schema.record.Shot;

/**
 * Rebounds off one rail in one session.
 *
 * @param truth what they are made from
 * @param departure of the room and the session
 * @param draws of chance
 */
record InventedRebounds(RailTruth truth, RailTruth.Departure departure, SeededDraws draws) {

    private static final double APPROACH_DEG = 45;
    private static final double SPEED_MPS = 2;
    private static final double SPEED_SD_MPS = 0.05;

    static InventedRebounds draw(RailTruth truth, RailTruth.Departure room, SeededDraws draws) {
        return new InventedRebounds(truth, room.plus(truth.session(draws)), draws);
    }

    /**
     * What is written down of one, NaN where nothing is.
     *
     * @param approachDeg of arrival, degrees
     * @param approachMps of arrival, m/s
     * @param reboundDeg of departure, degrees
     * @param reboundMps of departure, m/s
     */
    record Rebound(double approachDeg, double approachMps, double reboundDeg, double reboundMps) {

        /** Of a trial that has no such pair. */
        static final Rebound NONE = new Rebound(Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    Rebound draw(Shot shot, double rhPct, double tempC, double approachErrorDeg) {
        double approachDeg = shot.approachAngleDeg().orElse(APPROACH_DEG) + approachErrorDeg;
        double speedMps = shot.approachSpeedMps().orElse(SPEED_MPS) + draws.normal(SPEED_SD_MPS);
        RailProperties rail = truth.rail(rhPct, tempC, departure, InventedRoom.noseSine());
        RailMotion off = truth.rebound(rail, approachDeg, speedMps);
        return new Rebound(
                InventedRoom.rounded(approachDeg, 10),
                InventedRoom.rounded(speedMps, 100),
                InventedRoom.rounded(off.angleDeg() + draws.normal(truth.angleSdDeg()), 10),
                InventedRoom.rounded(off.speedMps() + speedMps * draws.normal(truth.ratioSd()), 100));
    }
}
