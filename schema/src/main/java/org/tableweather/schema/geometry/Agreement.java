package org.tableweather.schema.geometry;

/**
 * Whether a typed figure and one reduced from marks are the same within their uncertainties:
 * {@code |typed − reduced| ≤ k·√(u²(typed) + u²(reduced))}.
 *
 * @param typed what was typed
 * @param typedStandardUncertainty of it, same unit, ≥ 0
 * @param reduced what the marks say
 * @source JCGM100
 */
public record Agreement(double typed, double typedStandardUncertainty, Measured reduced) {

    /** Coverage factor k: of honest pairs with normal errors 0.27 % fail. */
    public static final double COVERAGE = 3;

    /**
     * A typed figure read from a scale.
     *
     * @param typed what was typed
     * @param step of the scale; its standard uncertainty is step/√12
     * @param reduced what the marks say
     */
    public static Agreement ofReading(double typed, double step, Measured reduced) {
        return new Agreement(typed, step / Math.sqrt(12), reduced);
    }

    /** Typed less reduced. */
    public double difference() {
        return typed - reduced.value();
    }

    /** The largest difference that still agrees. */
    public double bound() {
        return COVERAGE * Math.hypot(typedStandardUncertainty, reduced.standardUncertainty());
    }

    /** Whether they agree; a figure that is not a number agrees with nothing. */
    public boolean holds() {
        return Math.abs(difference()) <= bound();
    }
}
