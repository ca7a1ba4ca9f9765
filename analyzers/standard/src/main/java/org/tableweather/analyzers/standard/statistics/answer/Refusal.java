package org.tableweather.analyzers.standard.statistics.answer;

/**
 * Why data give no estimate.
 *
 * @param cause which of the cases
 * @param detail with figures, and what would help
 */
public record Refusal(Cause cause, String detail) {

    /** The cases. */
    public enum Cause {
        /** Fewer rooms, sessions, trials or points than the estimate needs. */
        TOO_FEW,
        /** What should vary does not: no scatter to judge by, or no spread of a covariate. */
        NO_VARIATION,
        /** Columns that determine each other. */
        COLLINEAR,
        /** A covariate parts the made from the missed: the coefficient has no finite estimate. */
        SEPARATION,
        /** What was measured is no more than error, or a known side effect, alone would show. */
        ERROR_SWAMPS,
        /** The search did not settle. */
        NOT_CONVERGED
    }
}
