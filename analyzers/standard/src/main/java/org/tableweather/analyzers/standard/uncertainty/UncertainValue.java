package org.tableweather.analyzers.standard.uncertainty;

/**
 * An estimate with its standard uncertainty.
 *
 * @param value the estimate, finite
 * @param standardUncertainty one standard deviation of what it may be, in the value's unit, 0 or more
 * @param degreesOfFreedom how well the uncertainty itself is known, at least 1; infinite when it is taken as exact
 */
public record UncertainValue(double value, double standardUncertainty, double degreesOfFreedom) {

    public UncertainValue {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value " + value + " is not finite");
        }
        if (!(standardUncertainty >= 0) || !Double.isFinite(standardUncertainty)) {
            throw new IllegalArgumentException(
                    "standardUncertainty " + standardUncertainty + " must be finite and at least 0");
        }
        if (!(degreesOfFreedom >= 1)) {
            throw new IllegalArgumentException("degreesOfFreedom " + degreesOfFreedom + " must be at least 1");
        }
    }

    /** A value that is known exactly. */
    public static UncertainValue exact(double value) {
        return of(value, 0);
    }

    /** A value with a standard uncertainty taken as exact. */
    public static UncertainValue of(double value, double standardUncertainty) {
        return new UncertainValue(value, standardUncertainty, Double.POSITIVE_INFINITY);
    }

    /**
     * Anywhere within ± a with equal right, as a stated accuracy or a printed digit has it: {@code u = a/√3}.
     *
     * @param value the middle
     * @param halfWidth a, at least 0
     * @source JCGM100
     */
    public static UncertainValue rectangular(double value, double halfWidth) {
        return of(value, halfWidth / Math.sqrt(3));
    }

    /**
     * Within ± a, the middle likelier: {@code u = a/√6}.
     *
     * @source JCGM100
     */
    public static UncertainValue triangular(double value, double halfWidth) {
        return of(value, halfWidth / Math.sqrt(6));
    }

    /**
     * Swinging between the ends ± a, as a room under a thermostat: {@code u = a/√2}.
     *
     * @source JCGM100
     */
    public static UncertainValue arcsine(double value, double halfWidth) {
        return of(value, halfWidth / Math.sqrt(2));
    }

    /**
     * From a certificate that states an expanded uncertainty: {@code u = U/k}.
     *
     * @param coverageFactor k, above 0
     * @source JCGM100
     */
    public static UncertainValue ofExpanded(double value, double expanded, double coverageFactor) {
        if (!(coverageFactor > 0)) {
            throw new IllegalArgumentException("coverageFactor " + coverageFactor + " must be above 0");
        }
        return of(value, expanded / coverageFactor);
    }

    /**
     * Mean of repeated observations: {@code u = s/√n} with n − 1 degrees of freedom (type A).
     *
     * @param observations at least two
     * @throws IllegalArgumentException of fewer than two
     * @source JCGM100
     */
    public static UncertainValue ofObservations(double... observations) {
        int n = observations.length;
        if (n < 2) {
            throw new IllegalArgumentException("observations " + n + " < 2: one reading says nothing of its scatter");
        }
        double mean = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double step = observations[i] - mean;
            mean += step / (i + 1);
            squares += step * (observations[i] - mean);
        }
        return new UncertainValue(mean, Math.sqrt(squares / (n - 1) / n), n - 1);
    }
}
