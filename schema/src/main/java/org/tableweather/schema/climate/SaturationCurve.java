package org.tableweather.schema.climate;

/**
 * Saturation pressure of water vapour over liquid water, alone in its volume, and its exact inverse.
 *
 * <p>{@link #HYLAND_WEXLER} is the default used everywhere; {@link #WAGNER_PRUSS} is the reference it is held against. From 0 to
 * 40 °C they differ by at most 0.023 %.
 */
public enum SaturationCurve {
    /**
     * {@code ln p = C₈/T + C₉ + C₁₀T + C₁₁T² + C₁₂T³ + C₁₃ ln T}, p in Pa, T in K. Fitted from 0 to 200 °C; below 0 °C the same
     * formula over supercooled water stays within 0.1 % of Sonntag's down to −40 °C.
     *
     * @source HylandWexler1983
     * @source ASHRAE2017
     */
    HYLAND_WEXLER("Hyland–Wexler 1983 over water", "HylandWexler1983", -40, 200) {
        @Override
        double lnPressure(double kelvin) {
            return -5.8002206e3 / kelvin
                    + 1.3914993
                    + kelvin * (-4.8640239e-2 + kelvin * (4.1764768e-5 + kelvin * -1.4452093e-8))
                    + 6.5459673 * StrictMath.log(kelvin);
        }

        @Override
        double lnPressureSlope(double kelvin) {
            return 5.8002206e3 / (kelvin * kelvin)
                    - 4.8640239e-2
                    + kelvin * (2 * 4.1764768e-5 + kelvin * 3 * -1.4452093e-8)
                    + 6.5459673 / kelvin;
        }
    },

    /**
     * {@code ln(p/p_c) = (T_c/T)(a₁θ + a₂θ¹·⁵ + a₃θ³ + a₄θ³·⁵ + a₅θ⁴ + a₆θ⁷·⁵)}, θ = 1 − T/T_c, T_c = 647.096 K, p_c = 22.064 MPa.
     * From 0 °C, 0.01 K below the triple point, to the critical point.
     *
     * @source WagnerPruss1993
     */
    WAGNER_PRUSS("Wagner–Pruss 1993 over water", "WagnerPruss1993", 0, 373.946) {
        @Override
        double lnPressure(double kelvin) {
            double theta = 1 - kelvin / CRITICAL_K;
            return StrictMath.log(CRITICAL_PA) + CRITICAL_K / kelvin * series(theta);
        }

        @Override
        double lnPressureSlope(double kelvin) {
            double theta = 1 - kelvin / CRITICAL_K;
            return -(CRITICAL_K / kelvin * series(theta) + seriesSlope(theta)) / kelvin;
        }
    };

    private static final double CRITICAL_K = 647.096;
    private static final double CRITICAL_PA = 22.064e6;
    private static final double[] FACTORS = {-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502};
    private static final double[] POWERS = {1, 1.5, 3, 3.5, 4, 7.5};
    private static final double ZERO_C = 273.15;
    private static final int MAX_STEPS = 50;

    private final String label;
    private final String reference;
    private final ValidRange range;

    SaturationCurve(String label, String reference, double minC, double maxC) {
        this.label = label;
        this.reference = reference;
        this.range = new ValidRange("tempC", minC, maxC, "°C");
    }

    abstract double lnPressure(double kelvin);

    abstract double lnPressureSlope(double kelvin);

    /** Name for people, with the phase: {@code Hyland–Wexler 1983 over water}. */
    public String label() {
        return label;
    }

    /** Key in {@code references.bib}. */
    public String reference() {
        return reference;
    }

    /** Temperatures at which the curve holds. */
    public ValidRange range() {
        return range;
    }

    /**
     * Saturation pressure.
     *
     * @param tempC °C, inside {@link #range()}
     * @return Pa
     * @throws IllegalArgumentException outside the range
     */
    public double pressurePa(double tempC) {
        return StrictMath.exp(lnPressure(range.require(tempC) + ZERO_C));
    }

    /**
     * Slope of the saturation pressure, {@code dp/dT = p · d(ln p)/dT}.
     *
     * @param tempC °C, inside {@link #range()}
     * @return Pa/K
     * @throws IllegalArgumentException outside the range
     */
    public double slopePaPerK(double tempC) {
        double kelvin = range.require(tempC) + ZERO_C;
        return StrictMath.exp(lnPressure(kelvin)) * lnPressureSlope(kelvin);
    }

    /**
     * The temperature whose saturation pressure this is: Newton's method on {@code ln p}, to the last bits of the curve itself.
     *
     * @param vapourPressurePa Pa, above 0
     * @return °C
     * @throws IllegalArgumentException if the pressure is that of no temperature inside {@link #range()}
     */
    public double temperatureC(double vapourPressurePa) {
        if (!(vapourPressurePa > 0) || !Double.isFinite(vapourPressurePa)) {
            throw new IllegalArgumentException(
                    "vapourPressurePa " + vapourPressurePa + " is not above 0 Pa: perfectly dry air has no dew point");
        }
        new ValidRange("vapourPressurePa", pressurePa(range.min()), pressurePa(range.max()), "Pa")
                .require(vapourPressurePa);
        double target = StrictMath.log(vapourPressurePa);
        double kelvin = firstGuessK(target);
        for (int step = 0; step < MAX_STEPS; step++) {
            double change = (target - lnPressure(kelvin)) / lnPressureSlope(kelvin);
            kelvin += change;
            if (Math.abs(change) < 1e-11) {
                break;
            }
        }
        return Math.min(Math.max(kelvin - ZERO_C, range.min()), range.max());
    }

    /** Magnus's form with Alduchov's and Eskridge's constants, solved for T: a start within 10 K everywhere. */
    private static double firstGuessK(double lnPressure) {
        double logRatio = lnPressure - StrictMath.log(610.94);
        return Math.min(243.04 * logRatio / (17.625 - logRatio) + ZERO_C, CRITICAL_K - 1);
    }

    private static double series(double theta) {
        double sum = 0;
        for (int i = 0; i < FACTORS.length; i++) {
            sum += FACTORS[i] * StrictMath.pow(theta, POWERS[i]);
        }
        return sum;
    }

    private static double seriesSlope(double theta) {
        double sum = 0;
        for (int i = 0; i < FACTORS.length; i++) {
            sum += FACTORS[i] * POWERS[i] * StrictMath.pow(theta, POWERS[i] - 1);
        }
        return sum;
    }
}
