package org.tableweather.schema.check;

import java.util.List;

/** Rules that compare values with their like; nothing is dropped for them. */
public final class StatisticsChecks {
    private static final CheckGroup GROUP = new CheckGroup("statistics");

    public static final Check OUTLIER = GROUP.warn(
            "outlier",
            "No outcome lies far from the others of its shot and session.",
            "robust z = 0.6745 |x - median| / MAD at most 6, among at least 8 trials",
            "check the entry; leave it as it is when it was observed so",
            "IglewiczHoaglin1993");

    public static final Check RUN_OF_EQUALS = GROUP.warn(
            "run-of-equals",
            "No two measured outcomes repeat trial after trial.",
            "fewer than 5 trials in a row with the same two outcomes",
            "look for rows copied in the spreadsheet",
            "CommonPractice");

    public static final Check NO_SCATTER = GROUP.warn(
            "no-scatter",
            "Measured outcomes of a shot scatter.",
            "not all of 8 or more outcomes of a shot in a session equal",
            "write what was measured at each attempt, not the mean",
            "CommonPractice");

    public static final Check COARSE = GROUP.note(
            "coarse-reading",
            "Angles are read finer than the change that is looked for.",
            "not all of 8 or more angles whole multiples of 5°",
            "read to a degree or better, or mark the contacts",
            "CommonPractice");

    public static final Check TREND = GROUP.note(
            "trend",
            "Outcomes do not run up or down through a session.",
            "correlation with the order of the trials below 0.9 in size, for 12 or more",
            "look for warming up, settling, or tiredness; longer settling helps",
            "CommonPractice");

    public static final Check REPEATED_SESSION = GROUP.warn(
            "repeated-session",
            "No two sessions have the same outcomes.",
            "the outcomes of 8 or more trials differ in at least one value",
            "take the copy out",
            "Tableweather10");

    private StatisticsChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
