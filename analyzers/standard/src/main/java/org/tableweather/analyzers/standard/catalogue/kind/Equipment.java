package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.statistics.spread.CentreTravel;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.SessionRecord;

/**
 * The sizes that a session states, and those taken when it states none: a ball of 57.15 mm and 163 g, the middle of the
 * specification's 5.5 to 6 oz; a width of half the length.
 *
 * @source WpaEquipment
 */
final class Equipment {

    static final double BALL_M = 0.05715;
    static final double BALL_KG = 0.163;

    private Equipment() {}

    static double ballM(SessionRecord session) {
        return session.ballSet()
                        .map(BallSet::diameterMm)
                        .orElse(OptionalDouble.empty())
                        .orElse(1000 * BALL_M)
                / 1000;
    }

    static double ballKg(SessionRecord session) {
        return session.ballSet()
                        .map(BallSet::massG)
                        .orElse(OptionalDouble.empty())
                        .orElse(1000 * BALL_KG)
                / 1000;
    }

    /** How far a centre travels along the table, m; NaN when the playing length is not stated or makes no table. */
    static double lengthM(SessionRecord session) {
        double length = session.table().playingLengthMm().orElse(Double.NaN) / 1000;
        return length > ballM(session) && ballM(session) > 0
                ? CentreTravel.metres(1, length, ballM(session))
                : Double.NaN;
    }

    /** How far a centre travels across the table, m; NaN likewise. */
    static double widthM(SessionRecord session) {
        double length = session.table().playingLengthMm().orElse(Double.NaN);
        double width = session.table().playingWidthMm().orElse(length / 2) / 1000;
        return width > ballM(session) && ballM(session) > 0 ? width - ballM(session) : Double.NaN;
    }
}
