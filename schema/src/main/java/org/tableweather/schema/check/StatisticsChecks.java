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

    private StatisticsChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
