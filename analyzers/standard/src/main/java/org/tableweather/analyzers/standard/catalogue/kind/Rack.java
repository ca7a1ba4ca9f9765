package org.tableweather.analyzers.standard.catalogue.kind;

import org.tableweather.analyzers.standard.statistics.spread.EdgeCorrection;
import org.tableweather.analyzers.standard.statistics.spread.ScatterExpectation;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What a break says of the balls' spread, when the rack had this many balls. */
final class Rack {

    private Rack() {}

    /**
     * Mean distance to the nearest neighbour over that of a random scatter of as many balls on the same bed, edges corrected:
     * {@code R = d̄ / (½√(A/N) + (0.0514 + 0.041/√N) P/N)}. N is the rack and the cue ball less the balls made; the bed is what
     * centres can reach.
     *
     * @param racked object balls at the beginning
     * @return NaN unless the distance, the balls made, and the playing length are known, and two balls are left
     * @source Clark1954
     * @source Donnelly1978
     */
    static double index(int racked, SessionRecord session, Trial trial) {
        int balls = racked + 1 - trial.ballsMade();
        double lengthM = Equipment.lengthM(session);
        double widthM = Equipment.widthM(session);
        if (trial.ballsMade() < 0 || balls < 2 || !(lengthM > 0 && widthM > 0)) {
            return Double.NaN;
        }
        double expected = ScatterExpectation.of(balls, lengthM, widthM, EdgeCorrection.DONNELLY)
                .meanDistance();
        return trial.spreadNearestMm() / 1000 / expected;
    }

    static double ballsMade(Trial trial) {
        return trial.ballsMade() < 0 ? Double.NaN : trial.ballsMade();
    }
}
