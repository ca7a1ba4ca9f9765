package org.tableweather.server.catalogue;

import java.util.OptionalDouble;

/**
 * A range that may be open on either side; both ends belong to it.
 *
 * @param from at least
 * @param to at most
 */
record Bounds(OptionalDouble from, OptionalDouble to) {

    boolean isOpen() {
        return from.isEmpty() && to.isEmpty();
    }

    /** Whether a value lies inside; one that is not known never does. */
    boolean hold(double value) {
        return value >= from.orElse(Double.NEGATIVE_INFINITY) && value <= to.orElse(Double.POSITIVE_INFINITY);
    }
}
