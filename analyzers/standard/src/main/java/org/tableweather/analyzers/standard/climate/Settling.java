package org.tableweather.analyzers.standard.climate;

/**
 * First-order approach to a new climate: {@code x(t) = x₁ + (x₀ − x₁) e^(−t/τ)}.
 *
 * <p>An approximation for cloth: wool takes up water in ways that depend on where it started and may overshoot. The time constant is
 * the user's or fitted from data; none is assumed.
 *
 * @param timeConstantHours τ, h, above 0
 */
public record Settling(double timeConstantHours) {

    public Settling {
        if (!(timeConstantHours > 0) || !Double.isFinite(timeConstantHours)) {
            throw new IllegalArgumentException("timeConstantHours " + timeConstantHours + " must be above 0");
        }
    }

    /**
     * Share of a step that is done: {@code 1 − e^(−t/τ)}; 63.2 % after τ, 95.0 % after 3τ.
     *
     * @param hours since the step, h, at least 0
     * @return 0 to 1
     * @throws IllegalArgumentException before the step
     */
    public double fractionAfter(double hours) {
        return -StrictMath.expm1(-requireHours(hours) / timeConstantHours);
    }

    /**
     * Time until this share of a step is done: {@code −τ ln(1 − f)}; 2.303 τ for 90 %.
     *
     * @param fraction 0 to below 1
     * @return h
     * @throws IllegalArgumentException of 1 or more: the approach never ends
     */
    public double hoursToFraction(double fraction) {
        if (!(fraction >= 0 && fraction < 1)) {
            throw new IllegalArgumentException(
                    "fraction " + fraction + " must be at least 0 and below 1: the approach never ends");
        }
        return -timeConstantHours * StrictMath.log1p(-fraction);
    }

    /**
     * Time until what is left of a step is no more than a tolerance: {@code τ ln(|step|/tolerance)}, 0 when it is so at once.
     *
     * @param step size of the step, any sign, in the unit of the tolerance
     * @param tolerance above 0
     * @return h
     */
    public double hoursToWithin(double step, double tolerance) {
        if (!(tolerance > 0) || !Double.isFinite(step)) {
            throw new IllegalArgumentException(
                    "step " + step + ", tolerance " + tolerance + ": the step must be finite, the tolerance above 0");
        }
        return Math.max(0, timeConstantHours * StrictMath.log(Math.abs(step) / tolerance));
    }

    /**
     * The value on its way.
     *
     * @param start before the step
     * @param target what it settles to
     * @param hours since the step, h, at least 0
     */
    public double valueAfter(double start, double target, double hours) {
        return start + (target - start) * fractionAfter(hours);
    }

    /**
     * How far a settled follower stays behind a climate that changes evenly: {@code rate · τ}.
     *
     * @param ratePerHour change of the climate per hour
     */
    public double lagBehindRamp(double ratePerHour) {
        return ratePerHour * timeConstantHours;
    }

    private static double requireHours(double hours) {
        if (!(hours >= 0)) {
            throw new IllegalArgumentException("hours " + hours + " must be at least 0");
        }
        return hours;
    }
}
