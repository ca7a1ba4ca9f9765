package org.tableweather.schema.climate;

import java.util.Arrays;
import java.util.Optional;

/**
 * Air over a saturated salt solution in a closed box: a fixed point of relative humidity to hold a hygrometer against.
 *
 * <p>{@code RH/% = A₀ + A₁t + A₂t² + A₃t³}, t in °C, by Greenspan's polynomials; for two salts, whose polynomials we have not seen,
 * straight lines between the entries of his table. Copies of the polynomials in public code carry the wrong sign of A₁ for lithium
 * chloride and potassium carbonate; with the signs here they give the table.
 *
 * @source Greenspan1977
 */
public enum SaltSolution {
    LITHIUM_CHLORIDE("LiCl", false, poly(11.2323, 0.00824245, -0.00021489, 0), table(0.35, 0.31, 0.27, 0.24)),
    MAGNESIUM_CHLORIDE("MgCl2", false, poly(33.6686, -0.00797397, -0.00108988, 0), table(0.21, 0.18, 0.16, 0.14)),
    POTASSIUM_CARBONATE("K2CO3", false, poly(43.1315, 0.00147523, 0, 0), table(0.33, 0.33, 0.39, 0.50)),
    MAGNESIUM_NITRATE("Mg(NO3)2", true, poly(60.3514, -0.298105, 0, 0), table(0.27, 0.23, 0.22, 0.24)),
    SODIUM_BROMIDE("NaBr", true, table(60.68, 59.14, 57.57, 56.03), table(0.51, 0.44, 0.40, 0.38)),
    POTASSIUM_IODIDE("KI", true, table(70.98, 69.90, 68.86, 67.89), table(0.28, 0.26, 0.24, 0.23)),
    SODIUM_CHLORIDE("NaCl", false, poly(75.5164, 0.0398321, -0.00265459, 2.848e-5), table(0.18, 0.14, 0.12, 0.11)),
    POTASSIUM_CHLORIDE("KCl", false, poly(88.619, -0.19334, 0.000899706, 0), table(0.33, 0.29, 0.26, 0.25)),
    POTASSIUM_SULPHATE("K2SO4", false, poly(98.7792, -0.0590502, 0, 0), table(0.63, 0.53, 0.45, 0.40));

    /** Temperatures for which values and uncertainties are tabulated here. */
    public static final ValidRange TEMPERATURE = new ValidRange("saltTempC", 15, 30, "°C");

    private static final double STEP_C = 5;

    private final String chemical;
    private final boolean fromMemory;
    private final Curve humidity;
    private final Curve uncertainty;

    SaltSolution(String chemical, boolean fromMemory, Curve humidity, Curve uncertainty) {
        this.chemical = chemical;
        this.fromMemory = fromMemory;
        this.humidity = humidity;
        this.uncertainty = uncertainty;
    }

    /** The salt by its formula, upper or lower case: {@code NaCl}; empty when it is none of these. */
    public static Optional<SaltSolution> ofFormula(String chemical) {
        return Arrays.stream(values())
                .filter(salt -> salt.chemical.equalsIgnoreCase(chemical.strip()))
                .findFirst();
    }

    /** Chemical formula of the salt, in plain letters: {@code Mg(NO3)2}. */
    public String chemical() {
        return chemical;
    }

    /** Whether the values themselves were written down from memory and are still to be confirmed. */
    public boolean isFromMemory() {
        return fromMemory;
    }

    /**
     * Relative humidity over the solution.
     *
     * @param tempC of solution and air alike, °C, inside {@link #TEMPERATURE}
     * @return %
     * @throws IllegalArgumentException outside the range
     */
    public double rhPct(double tempC) {
        return humidity.at(TEMPERATURE.require(tempC));
    }

    /**
     * Uncertainty printed with the value, ± %RH, straight between the tabulated temperatures. The printed figures are from memory, and
     * what multiple they are of a standard uncertainty is not known to us: take them as a half-width.
     *
     * @param tempC °C, inside {@link #TEMPERATURE}
     * @return %RH
     * @throws IllegalArgumentException outside the range
     */
    public double halfWidthPct(double tempC) {
        return uncertainty.at(TEMPERATURE.require(tempC));
    }

    /** Standard uncertainty of the value, %RH: {@code a/√3} for the half-width a. */
    public double standardUncertaintyPct(double tempC) {
        return halfWidthPct(tempC) / Math.sqrt(3);
    }

    private static Curve poly(double a0, double a1, double a2, double a3) {
        return t -> a0 + t * (a1 + t * (a2 + t * a3));
    }

    /** Straight lines between values at 15, 20, 25 and 30 °C. */
    private static Curve table(double... values) {
        return t -> {
            double position = (t - 15) / STEP_C;
            int cell = Math.min((int) position, values.length - 2);
            return values[cell] + (position - cell) * (values[cell + 1] - values[cell]);
        };
    }

    /** A quantity over temperature. */
    private interface Curve {
        double at(double tempC);
    }
}
