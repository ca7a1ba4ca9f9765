package org.tableweather.schema.check;

import java.util.List;

/** Rules of what each kind of trial can have for an outcome: bounds of belief, wider than any ordinary value. */
public final class OutcomeChecks {
    private static final CheckGroup GROUP = new CheckGroup("outcome");

    public static final Check APPROACH_SPEED = GROUP.warn(
            "approach-speed",
            "A ball is not faster than the hardest stroke of its kind.",
            "break 16 m/s; every other kind 10 m/s",
            "check the value and its unit; 1 mph is 0.447 m/s",
            "AlciatorePhysics");

    public static final Check FASTER_OFF_RAIL = GROUP.warn(
            "faster-off-rail",
            "A cushion gives back less speed than it takes.",
            "rebound speed at most the approach speed",
            "check which of the two columns each speed stands in, and their units",
            "AlciatorePhysics");

    public static final Check REBOUND_UNLIKE_APPROACH = GROUP.warn(
            "rebound-unlike-approach",
            "A ball without side spin leaves the rail at about the angle of its approach.",
            "within 25° of the angle of approach",
            "measure both angles from the rail's normal, not from the rail",
            "CommonPractice");

    public static final Check LANDING_FAR = GROUP.warn(
            "landing-far",
            "A shot lands near its target.",
            "at most 3 diamonds from the target",
            "check the target, and the sign; leave it when it was so",
            "CommonPractice");

    public static final Check RUN_OUTS_DISAGREE = GROUP.warn(
            "run-outs-disagree",
            "A run-out in metres and one in table lengths are the same distance.",
            "within 3 % of the playing length times run_out_lengths",
            "correct one of the two, or the table's length",
            "Tableweather10");

    public static final Check ROLLING_RESISTANCE = GROUP.warn(
            "rolling-resistance",
            "A run-out fits its speed at a resistance that cloth can have.",
            "v²/(2 g d) from 0.003 to 0.03",
            "check speed and distance; the speed is that of a rolling ball where the distance begins",
            "AlciatorePhysics");

    public static final Check BALLS_MADE = GROUP.warn(
            "balls-made",
            "A break leaves balls on the table.",
            "at most 7 balls made",
            "count the balls made on the break alone",
            "CommonPractice");

    public static final Check SPREAD = GROUP.warn(
            "spread",
            "The centres of two balls are at least one ball apart, and a rack does not spread beyond the table.",
            "52 to 700 mm",
            "measure from centre to nearest centre, and take the mean",
            "CommonPractice");

    public static final Check CUE_BALL_TRAVEL = GROUP.warn(
            "cue-ball-travel",
            "The cue ball comes to rest after a break.",
            "at most 25 m",
            "check the value, and its unit",
            "CommonPractice");

    public static final Check THROW_ANGLE = GROUP.warn(
            "throw-angle",
            "Throw is a matter of a few degrees.",
            "object ball at most 12° off the line of centres",
            "give the angle between its path and the line of centres, not the cut angle",
            "CommonPractice");

    public static final Check DEFLECTION_ANGLE = GROUP.warn(
            "deflection-angle",
            "Deflection is a matter of a few degrees.",
            "cue ball at most 10° off the line of the cue",
            "give the angle between its path and the line of the cue",
            "CommonPractice");

    public static final Check HOP_HEIGHT = GROUP.warn(
            "hop-height",
            "A ball hops lower than the players' heads.",
            "at most 400 mm",
            "check the value, and its unit",
            "CommonPractice");

    public static final Check RAILS_OF_KIND = GROUP.warn(
            "rails-of-kind",
            "A rebound has one rail; a bank or kick has at least one.",
            "rails = 1 for rebound, at least 1 for bank and kick",
            "count the rails touched before the landing",
            "CommonPractice");

    public static final Check RAILS_UNLIKE_SHOT = GROUP.warn(
            "rails-unlike-shot",
            "A trial touches as many rails as its shot.",
            "the number of rails of the shot",
            "correct rails, or say in a note what happened",
            "Tableweather10");

    public static final Check APPROACH_UNLIKE_SHOT = GROUP.warn(
            "approach-unlike-shot",
            "A ball approaches the first rail as its shot says.",
            "within 15° of the shot's angle of approach",
            "measure from the rail's normal, not from the rail; correct angle or shot",
            "CommonPractice");

    public static final Check OTHER_KIND = GROUP.note(
            "other-kind",
            "An outcome stands in a row of its kind.",
            "spread_nearest_mm and cue_ball_travel_m for break, deflection_angle_deg for deflection, hop_height_mm for hop",
            "correct kind, or move the value to its own trial",
            "Tableweather10");

    private OutcomeChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
