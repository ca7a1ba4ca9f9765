package org.tableweather.analyzers.standard.physics;

import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;

/**
 * The rail that a leg meets first: the least time at which the centre crosses a rail's line outwards, from
 * {@code d = v t + ½ a t²} without cancellation.
 *
 * @param rail which; the head rail when none is met
 * @param timeS when, s from the leg's start; infinite when none is met
 */
record RailMeeting(Rail rail, double timeS) {

    private static final Rail[] RAILS = Rail.values();

    static RailMeeting first(Leg leg, TableSize table) {
        Rail first = Rail.HEAD;
        double least = Double.POSITIVE_INFINITY;
        for (Rail rail : RAILS) {
            double time = time(rail, leg, table);
            if (time < least) {
                least = time;
                first = rail;
            }
        }
        return new RailMeeting(first, least);
    }

    private static double time(Rail rail, Leg leg, TableSize table) {
        double line = table.lineM(rail);
        return switch (rail) {
            case HEAD -> time(leg.start().xM() - line, -leg.start().vxMps(), -leg.axMps2());
            case FOOT -> time(line - leg.start().xM(), leg.start().vxMps(), leg.axMps2());
            case NEAR -> time(leg.start().yM() - line, -leg.start().vyMps(), -leg.ayMps2());
            case FAR -> time(line - leg.start().yM(), leg.start().vyMps(), leg.ayMps2());
        };
    }

    // a ball on the line that leaves it can be drawn back by its spin: then the second root counts
    private static double time(double distance, double speed, double pull) {
        double d = Math.max(0, distance);
        if (speed > 0) {
            double square = speed * speed + 2 * pull * d;
            return square < 0 ? Double.POSITIVE_INFINITY : 2 * d / (speed + Math.sqrt(square));
        }
        return pull > 0 ? (Math.sqrt(speed * speed + 2 * pull * d) - speed) / pull : Double.POSITIVE_INFINITY;
    }

    /** The same motion with the centre on the rail's line. */
    static BallState held(Rail rail, BallState state, TableSize table) {
        double line = table.lineM(rail);
        return switch (rail) {
            case HEAD, FOOT -> state.at(line, state.yM());
            case NEAR, FAR -> state.at(state.xM(), line);
        };
    }
}
