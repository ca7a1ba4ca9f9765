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

    private GeometryChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
