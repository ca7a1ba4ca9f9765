package org.tableweather.analyzers.standard.climate;

import java.util.Optional;
import org.tableweather.analyzers.standard.uncertainty.Propagation;
import org.tableweather.analyzers.standard.uncertainty.UncertainInputs;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.analyzers.standard.uncertainty.UncertaintyBudget;
import org.tableweather.schema.record.Cloth;

/**
 * A cloth of wool and nylon, by dry mass; its regain is the mean of the fibres' by mass (rule of mixtures).
 *
 * @param woolPct wool, %
 * @param nylonPct nylon, %; the two make 100 within half a percent
 */
public record ClothBlend(double woolPct, double nylonPct) {
    private static final double TOLERANCE_PCT = 0.5;

    public ClothBlend {
        if (!(woolPct >= 0 && nylonPct >= 0) || !(Math.abs(woolPct + nylonPct - 100) <= TOLERANCE_PCT)) {
            throw new IllegalArgumentException("woolPct " + woolPct + " and nylonPct " + nylonPct
                    + " must make 100 %: no isotherm is known here for other fibres");
        }
    }

    /** The blend of a described cloth; empty when it is not stated, or has other fibres in it. */
    public static Optional<ClothBlend> of(Cloth cloth) {
        if (cloth.woolPct().isEmpty() && cloth.nylonPct().isEmpty()) {
            return Optional.empty();
        }
        double wool = cloth.woolPct().orElse(0);
        double nylon = cloth.nylonPct().orElse(0);
        boolean whole = wool >= 0 && nylon >= 0 && Math.abs(wool + nylon - 100) <= TOLERANCE_PCT;
        return whole ? Optional.of(new ClothBlend(wool, nylon)) : Optional.empty();
    }

    /** Mean by dry mass of what the two fibres hold. */
    double mix(double ofWool, double ofNylon) {
        return (woolPct * ofWool + nylonPct * ofNylon) / (woolPct + nylonPct);
    }

    /**
     * Estimated regain in equilibrium, % of dry mass.
     *
     * @param rhPct relative humidity at the cloth, %, inside {@link Fibre#HUMIDITY}
     * @param tempC temperature of the cloth, °C, inside {@link Fibre#TEMPERATURE}
     * @throws IllegalArgumentException outside the ranges
     */
    public double regainPct(double rhPct, double tempC) {
        return mix(Fibre.WOOL.regainPct(rhPct, tempC), Fibre.NYLON.regainPct(rhPct, tempC));
    }

    /** The estimate with its stated error as a rectangular half-width, the climate taken as exact. */
    public UncertainValue regain(double rhPct, double tempC) {
        double value = regainPct(rhPct, tempC);
        return UncertainValue.rectangular(value, value * Fibre.relativeHalfWidth(rhPct));
    }

    /**
     * The estimate with the stated error of the isotherm and the uncertainty of the climate at the cloth.
     *
     * @param rhPct relative humidity at the cloth, %
     * @param tempC temperature of the cloth, °C
     */
    public UncertaintyBudget regain(UncertainValue rhPct, UncertainValue tempC) {
        UncertainInputs inputs = UncertainInputs.none()
                .and("rhPct", rhPct)
                .and("tempC", tempC)
                .and("isotherm", UncertainValue.rectangular(1, Fibre.relativeHalfWidth(rhPct.value())));
        return Propagation.of(x -> x[2] * regainPct(x[0], x[1]), inputs);
    }

    /** Moisture content, % of the moist mass, of a regain in % of dry mass: {@code 100 R/(100 + R)}. */
    public static double moistureContentPct(double regainPct) {
        return 100 * regainPct / (100 + regainPct);
    }

    /** Regain, % of dry mass, of a moisture content in % of the moist mass: {@code 100 c/(100 − c)}. */
    public static double regainOfContentPct(double contentPct) {
        if (!(contentPct >= 0 && contentPct < 100)) {
            throw new IllegalArgumentException("contentPct " + contentPct + " must be at least 0 and below 100 %");
        }
        return 100 * contentPct / (100 - contentPct);
    }
}
