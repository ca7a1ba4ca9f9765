package org.tableweather.analyzers.standard.statistics;

/**
 * Why a nested model cannot be fitted.
 *
 * @param cause which of the cases
 * @param detail with figures
 */
public record NestedRefusal(Cause cause, String detail) implements NestedOutcome {

    /** The cases. */
    public enum Cause {
        /** No rows. */
        NO_DATA,
        /** No more rows than coefficients. */
        TOO_FEW_ROWS,
        /** The covariates explain the response to rounding: there is no scatter to judge it by. */
        EXACT_FIT
    }
}
