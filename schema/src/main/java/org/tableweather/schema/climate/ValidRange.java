package org.tableweather.schema.climate;

/**
 * The closed interval in which a formula holds; outside it there is an error, never a number.
 *
 * @param quantity what is bounded, named as in the data: {@code rhPct}
 * @param min smallest value allowed
 * @param max largest value allowed
 * @param unit for the message: {@code °C}
 */
public record ValidRange(String quantity, double min, double max, String unit) {

    public ValidRange {
        if (!(min < max)) {
            throw new IllegalArgumentException(quantity + ": lower bound " + min + " is not below upper bound " + max);
        }
    }

    /** Whether the value lies inside, bounds included; NaN does not. */
    public boolean contains(double value) {
        return value >= min && value <= max;
    }

    /**
     * The value itself.
     *
     * @throws IllegalArgumentException naming value and bound, if the value lies outside or is NaN
     */
    public double require(double value) {
        if (contains(value)) {
            return value;
        }
        String bound = value < min ? "is below " + plain(min) : value > max ? "is above " + plain(max) : "is no number";
        throw new IllegalArgumentException(quantity + " " + plain(value) + " " + unit + " " + bound + " " + unit
                + ": the formula holds from " + plain(min) + " to " + plain(max) + " " + unit);
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
