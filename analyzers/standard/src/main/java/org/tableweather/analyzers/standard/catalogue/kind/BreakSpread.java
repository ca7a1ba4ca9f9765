package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * How the spread of the break changes with humidity, by the nearest-neighbour index with edge correction, beside the balls made
 * and the cue ball's travel.
 */
public final class BreakSpread extends PooledKind {

    private static final Outcome INDEX_15 = index("nearest_neighbour_index", 15);
    private static final Outcome INDEX_10 = index("nearest_neighbour_index_of_10", 10);
    private static final Outcome INDEX_9 = index("nearest_neighbour_index_of_9", 9);

    private static final Outcome DISTANCE = new Outcome(
            "spread_nearest_mm",
            "distance to the nearest ball",
            "mm",
            " mm",
            1,
            "the break spreads the balls less when damp, more when dry",
            "the break spreads the balls more when damp, less when dry",
            "spread_nearest_mm",
            Reading.column(Trial::spreadNearestMm));

    private static final Outcome BALLS_MADE = new Outcome(
            "balls_made",
            "number of balls made on the break",
            "balls",
            " balls",
            2,
            "fewer balls go in when damp, more when dry",
            "more balls go in when damp, fewer when dry",
            "balls_made",
            Reading.column(Rack::ballsMade));

    private static final Outcome CUE_BALL = new Outcome(
            "cue_ball_travel_m",
            "cue ball's travel after the break",
            "m",
            " m",
            2,
            "the cue ball travels less when damp, more when dry",
            "the cue ball travels more when damp, less when dry",
            "cue_ball_travel_m",
            Reading.column(Trial::cueBallTravelM));

    private static Outcome index(String parameter, int racked) {
        return new Outcome(
                parameter,
                "nearest-neighbour index of a break of " + racked,
                "1",
                "",
                3,
                "the break spreads the balls less when damp, more when dry",
                "the break spreads the balls more when damp, less when dry",
                "spread_nearest_mm, balls_made, and the table's length",
                (session, trial) -> Rack.index(racked, session, trial));
    }

    /** What is asked of it. */
    static final KindDefinition DEFINITION = new KindDefinition(
            Kind.BREAK,
            List.of(INDEX_15, DISTANCE, BALLS_MADE, CUE_BALL, INDEX_10, INDEX_9),
            List.of(DISTANCE, BALLS_MADE, CUE_BALL),
            List.of(KindCovariate.approachSpeed(8), KindCovariate.tipOffset(0)));

    /** Holds no state. */
    public BreakSpread() {
        super(
                DEFINITION,
                new KindInfo(
                        "break-spread",
                        "1.1.1",
                        "Break and humidity",
                        "Does the break spread the balls more, or less, when it is damp?",
                        "Nearest-neighbour index R of each break: the mean distance of each ball to its nearest neighbour over"
                                + " that of a random scatter, ½√(A/N) + (0.0514 + 0.041/√N) P/N; A and P are area and"
                                + " perimeter of what centres can reach, N the balls on the table: the rack and the cue ball"
                                + " less balls_made. 1 is random, below is clustered, above is more even than chance. Beside"
                                + " it the plain distance, the balls made, and the cue ball's travel, each pooled by the same"
                                + " model.",
                        List.of(
                                "Only the mean distance is logged, not the positions: tests of the pattern (who is near whom,"
                                        + " where on the bed, other distances) cannot be made from it.",
                                "N is known from balls_made: with 15 racked, one ball more or less moves the expected distance"
                                        + " by about 3 to 4 %, so breaks without balls_made have no index, and a cue ball that"
                                        + " went in, which no column states, raises R by as much.",
                                "15 balls were racked; for racks of 10 or 9 choose that response.",
                                "The bed is a rectangle without pockets; a width that is not stated is half the length, a"
                                        + " ball that is not stated measures 57.15 mm.",
                                "balls_made is a small count, treated as if it were normal: its mean is sound, its interval"
                                        + " rough."),
                        List.of(
                                "spread_nearest_mm",
                                "balls_made",
                                "cue_ball_travel_m",
                                "approach_speed_mps",
                                "tip_offset_mm"),
                        List.of("Clark1954", "Donnelly1978", "WpaEquipment")));
    }
}
