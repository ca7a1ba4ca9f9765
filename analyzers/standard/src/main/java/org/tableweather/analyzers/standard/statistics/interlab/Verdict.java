package org.tableweather.analyzers.standard.statistics.interlab;

/**
 * What an outlier test says of its suspect.
 *
 * @source ISO57252
 */
public enum Verdict {
    /** Within the 5 % bound. */
    CORRECT,
    /** Beyond the 5 % bound: look for a cause, keep it without one. */
    STRAGGLER,
    /** Beyond the 1 % bound: leave it out only with a reason, and show both results. */
    OUTLIER;

    static Verdict of(boolean beyondFive, boolean beyondOne) {
        if (beyondOne) {
            return OUTLIER;
        }
        return beyondFive ? STRAGGLER : CORRECT;
    }
}
