package org.tableweather.schema.equipment;

import java.util.OptionalDouble;

/**
 * One figure of a specification.
 *
 * @param nominal the figure; empty when only bounds are given
 * @param lower least allowed; empty when not given
 * @param upper greatest allowed; empty when not given
 * @param reference key in {@code references.bib}
 * @param certainty {@code second-hand}: a quotation of the standard was seen, not the standard itself;
 *     {@code common-practice}: no published source
 */
public record Specified(
        OptionalDouble nominal, OptionalDouble lower, OptionalDouble upper, String reference, String certainty) {

    public Specified {
        nominal = nominal == null ? OptionalDouble.empty() : nominal;
        lower = lower == null ? OptionalDouble.empty() : lower;
        upper = upper == null ? OptionalDouble.empty() : upper;
    }

    /** Whether a value keeps to the bounds that are given. */
    public boolean allows(double value) {
        return value >= lower.orElse(Double.NEGATIVE_INFINITY) && value <= upper.orElse(Double.POSITIVE_INFINITY);
    }
}
