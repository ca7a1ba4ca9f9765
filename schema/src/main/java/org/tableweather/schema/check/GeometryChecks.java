package org.tableweather.schema.check;

import java.util.List;

/** Rules of angles, offsets and marked paths. */
public final class GeometryChecks {
    private static final CheckGroup GROUP = new CheckGroup("geometry");

    public static final Check FINAL_DIFFERS = GROUP.warn(
            "final-differs",
            "After one rail the final rebound angle is the rebound angle.",
            "within 0.1°",
            "correct one of the two, or rails",
            "CommonPractice");

    public static final Check NEGATIVE_REBOUND = GROUP.warn(
            "negative-rebound",
            "A ball without strong side spin leaves the rail on the far side of the normal.",
            "0 to 90°",
            "check the sign; 0° is straight out of the rail",
            "CommonPractice");

    public static final Check CONTACT_OUTSIDE = GROUP.refuse(
            "contact-outside",
            "Marked points lie on the table.",
            "x 0 to 8 and y 0 to 4 diamonds, or within the table's length and width",
            "mark the ball's centre, in the table frame: x from the head rail, y from the near rail",
            "WpaEquipment");

    public static final Check CONTACT_ORDER = GROUP.refuse(
            "contact-order",
            "The marked points of a path are in order.",
            "seq and t_s rise along the rows of a trial",
            "sort the rows of each trial by seq",
            "Tableweather10");

    public static final Check CONTACT_TRIAL = GROUP.refuse(
            "contact-trial",
            "Marked points belong to a trial.",
            "a session and trial of trials.csv",
            "correct session and trial",
            "Tableweather10");

    public static final Check CONTACT_RAIL = GROUP.refuse(
            "contact-rail",
            "A rail contact says which rail.",
            "rail: head, foot, near, far",
            "fill in the rail",
            "Tableweather10");

    public static final Check SEQ_GAP = GROUP.warn(
            "contact-seq-gap",
            "The points of a path are numbered without gaps.",
            "1, 2, 3 ...",
            "add the missing point, or number the points anew",
            "Tableweather10");

    public static final Check PATH_SHORT = GROUP.warn(
            "path-too-short",
            "A path has a beginning and an end.",
            "at least 2 points",
            "mark where the path begins, each rail contact, and a point after the last one",
            "Tableweather10");

    public static final Check PATH_SEQUENCE = GROUP.warn(
            "path-sequence",
            "A path begins with its start and ends with its rest.",
            "one start first, one rest last, each seq once",
            "number the points of one attempt 1, 2, 3 ... along its path",
            "Tableweather10");

    public static final Check NO_PLACE = GROUP.warn(
            "contact-without-place",
            "A marked point has both coordinates.",
            "x_dia and y_dia, or x_m and y_m",
            "mark the ball's centre in one of the two units",
            "Tableweather10");

    public static final Check TWO_PLACES = GROUP.warn(
            "contact-two-places",
            "Diamonds and metres of a point name the same place.",
            "within the marking error, at least 5 mm",
            "correct one of the two, or the table's size",
            "Tableweather10");

    public static final Check OUTSIDE_CENTRES = GROUP.warn(
            "centre-too-near-nose",
            "A ball's centre stays one ball radius inside the noses.",
            "within the marking error, at least 5 mm",
            "mark the ball's centre",
            "WpaEquipment");

    public static final Check OFF_RAIL = GROUP.warn(
            "contact-off-rail",
            "A rail contact lies one ball radius inside the nose of its rail.",
            "within the marking error, at least 5 mm",
            "mark the ball's centre at the moment of contact, not the nose",
            "WpaEquipment");

    public static final Check RAILS_ORDER = GROUP.warn(
            "rails-order",
            "A ball does not touch the same rail twice in a row.",
            "another rail or a ball in between",
            "add the contact that was left out, or correct the rail",
            "CommonPractice");

    public static final Check SAME_PLACE = GROUP.warn(
            "contact-same-place",
            "Two points in a row are at two places.",
            "a leg longer than 0",
            "leave out one of the two points",
            "CommonPractice");

    public static final Check TIMES_EQUAL = GROUP.warn(
            "contact-times",
            "Times rise along a path.",
            "each t_s later than the one before",
            "give seconds since the first point, or leave t_s empty",
            "Tableweather10");

    public static final Check NOT_THE_SHOT = GROUP.warn(
            "path-unlike-shot",
            "A path touches the rails of its shot in their order.",
            "rails of the shot",
            "correct rail or shot; keep the row with a note when the attempt went wrong",
            "Tableweather10");

    public static final Check ANGLE_DIFFERS = GROUP.warn(
            "angle-unlike-contacts",
            "A typed angle agrees with the marked path.",
            "3 standard uncertainties of the difference",
            "measure again, or leave the typed angle out: it is computed from the contacts",
            "JCGM100");

    public static final Check LANDING_DIFFERS = GROUP.warn(
            "landing-unlike-contacts",
            "A typed landing offset agrees with the marked path.",
            "3 standard uncertainties of the difference",
            "measure again, or leave the typed offset out: it is computed from the contacts",
            "JCGM100");

    public static final Check RAILS_DIFFER = GROUP.warn(
            "rails-unlike-contacts",
            "The typed number of rails is that of the marked path.",
            "equal",
            "correct one of the two",
            "Tableweather10");

    public static final Check PATH_SPEED = GROUP.warn(
            "path-speed",
            "A marked ball is not faster than the hardest stroke.",
            "mean of a leg at most 16 m/s",
            "check t_s: seconds, not frames",
            "AlciatorePhysics");

    public static final Check PATH_SPEEDS_UP = GROUP.warn(
            "path-speeds-up",
            "A ball loses speed at each rail.",
            "mean of the leg after a rail at most 1.1 times that before, within 3 standard uncertainties",
            "check the times of the contacts",
            "AlciatorePhysics");

    public static final Check TABLE_UNSTATED = GROUP.note(
            "table-size-unstated",
            "Marked paths are reduced on a table of known size.",
            "playingLengthMm of the table",
            "measure nose to nose, in mm",
            "Tableweather10");

    public static final Check CAMERA_UNKNOWN = GROUP.warn(
            "camera-unknown",
            "Points on a video frame name a camera whose known points are marked.",
            "a camera of marks, for the session",
            "add the camera to marks, with four or more known points of the table",
            "Tableweather10");

    public static final Check CAMERA_UNFIT = GROUP.warn(
            "camera-unfit",
            "The known points of a camera give a view of the table.",
            "four or more, no three of them on one line",
            "mark points far apart, the noses at the corners for instance",
            "HartleyZisserman2004");

    public static final Check CAMERA_RESIDUAL = GROUP.warn(
            "camera-residual",
            "The known points of a camera fit each other.",
            "root mean square 10 mm on the table",
            "mark the points again; a lens that bends lines needs a view from farther away",
            "CommonPractice");

    private GeometryChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
