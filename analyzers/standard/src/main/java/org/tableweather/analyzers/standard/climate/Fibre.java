package org.tableweather.analyzers.standard.climate;

import org.tableweather.schema.climate.ValidRange;

/**
 * A fibre's moisture regain in equilibrium: mass of water per dry mass, %.
 *
 * <p>The regain at another temperature is that of the humidity with the same regain at the isotherm's own temperature (Clausius and
 * Clapeyron): {@code φ₀ = φ e^(−(Q/R_v)(1/T₀ − 1/T))}, with the heat of absorption from liquid water
 * {@code Q = 195 (1 − φ)(1/(0.2 + φ) + 1/(1.05 − φ)) J/g}. So warmer cloth at the same relative humidity holds slightly less.
 */
public enum Fibre {
    /**
     * {@code R = M C K φ / ((1 − Kφ)(1 − Kφ + C K φ))} with M = 10.5639 %, C = 9.4345, K = 0.64620 at 24 °C: a fit of the
     * Guggenheim–Anderson–de Boer form to the handbook's row for merino skein, within 0.25 of its values (the row is from memory).
     *
     * @source ASHRAERegain
     */
    WOOL(24) {
        @Override
        double isothermPct(double phi) {
            double water = 0.64620 * phi;
            return 10.5639 * 9.4345 * water / ((1 - water) * (1 - water + 9.4345 * water));
        }
    },

    /**
     * {@code R = 0.55 R₆₅ φ (1/(0.25 + φ) + 1/(1.25 − φ))} with R₆₅ = 4.1 % at 20 °C: the form of a published clothing model with
     * the textbook's regain for nylon (from memory).
     *
     * @source ClothingModel
     * @source MortonHearle2008
     */
    NYLON(20) {
        @Override
        double isothermPct(double phi) {
            return 0.55 * 4.1 * phi * (1 / (0.25 + phi) + 1 / (1.25 - phi));
        }
    };

    /** Relative humidities of the isotherms. */
    public static final ValidRange HUMIDITY = new ValidRange("rhPct", 10, 90, "%");

    /** Temperatures of cloth in rooms. */
    public static final ValidRange TEMPERATURE = new ValidRange("tempC", 10, 40, "°C");

    private static final double ZERO_C = 273.15;
    private static final double VAPOUR_CONSTANT = 0.46152;
    private static final int ROUNDS = 20;

    private final double isothermC;

    Fibre(double isothermC) {
        this.isothermC = isothermC;
    }

    /** Regain at the isotherm's own temperature, %, of a humidity as a share, 0 to 1. */
    abstract double isothermPct(double phi);

    /**
     * Estimated regain in equilibrium, between uptake and release of water.
     *
     * @param rhPct relative humidity at the cloth, %, inside {@link #HUMIDITY}
     * @param tempC temperature of the cloth, °C, inside {@link #TEMPERATURE}
     * @return % of dry mass
     * @throws IllegalArgumentException outside the ranges
     */
    public double regainPct(double rhPct, double tempC) {
        double phi = HUMIDITY.require(rhPct) / 100;
        double warmer = 1 / (isothermC + ZERO_C) - 1 / (TEMPERATURE.require(tempC) + ZERO_C);
        double equivalent = phi;
        for (int round = 0; round < ROUNDS; round++) {
            equivalent = phi * StrictMath.exp(-heatOfAbsorption(equivalent) / VAPOUR_CONSTANT * warmer);
        }
        return isothermPct(equivalent);
    }

    /**
     * Heat set free by a gram of liquid water taken up by the fibre, J/g; the same for wool and nylon, which hold water at like sites.
     *
     * @param phi relative humidity as a share, 0 to 1
     * @source ClothingModel
     * @source MortonHearle2008
     */
    static double heatOfAbsorption(double phi) {
        return 195 * (1 - phi) * (1 / (0.2 + phi) + 1 / (1.05 - phi));
    }

    /**
     * Stated error of an estimate, relative half-width: 0.30 from 40 to 80 %RH, 0.45 further out. It spans the difference between
     * taking up and giving off water, the spread of fibres, and the distance between published curves; nearly all of it is common to
     * two estimates for the same cloth, so their difference is known better.
     *
     * @param rhPct relative humidity, %
     */
    public static double relativeHalfWidth(double rhPct) {
        return HUMIDITY.require(rhPct) < 40 || rhPct > 80 ? 0.45 : 0.30;
    }
}
