package org.tableweather.schema.climate;

/**
 * One state of moist air and what follows from it, as a mixture of two ideal gases.
 *
 * <p>Against the real mixture the humidity ratio of saturated air is low by about 0.5 % at room temperature; nearly all of that is
 * the enhancement factor.
 *
 * @param tempC dry-bulb temperature, °C, inside {@link #TEMPERATURE}
 * @param rhPct relative humidity over water, %, 0 to 100
 * @param pressurePa pressure of the air, Pa, inside {@link #PRESSURE}
 * @param formula which saturation curve and enhancement factor its values use
 * @source ASHRAE2017
 */
public record MoistAir(double tempC, double rhPct, double pressurePa, VapourFormula formula) {

    /** Air temperatures at which the mixture of ideal gases is good enough for rooms. */
    public static final ValidRange TEMPERATURE = new ValidRange("tempC", -40, 60, "°C");

    /** Relative humidities. */
    public static final ValidRange HUMIDITY = new ValidRange("rhPct", 0, 100, "%");

    /** Pressures of places where people play: up to about 4 200 m above the sea. */
    public static final ValidRange PRESSURE = new ValidRange("pressurePa", 60_000, 110_000, "Pa");

    /** Temperatures of a surface that this air touches. */
    public static final ValidRange SURFACE = new ValidRange("surfaceC", -40, 60, "°C");

    /** The standard atmosphere at sea level, Pa. */
    public static final double SEA_LEVEL_PA = 101_325;

    /** Ratio of the molar masses of water and dry air. */
    private static final double MOLAR_MASS_RATIO = 0.621945;

    /** Gas constant of water vapour, J/(kg K). */
    private static final double VAPOUR_CONSTANT = 461.52;

    private static final double ZERO_C = 273.15;
    private static final double DRY_HEAT = 1.006;
    private static final double VAPOUR_HEAT = 1.86;
    private static final double LATENT_HEAT = 2501;
    private static final double LIQUID_HEAT = 4.186;
    private static final int HALVINGS = 60;

    public MoistAir {
        TEMPERATURE.require(tempC);
        HUMIDITY.require(rhPct);
        PRESSURE.require(pressurePa);
    }

    /** Air at sea level, with the default formulas. */
    public static MoistAir of(double tempC, double rhPct) {
        return of(tempC, rhPct, SEA_LEVEL_PA);
    }

    /** Air at a pressure in Pa, with the default formulas. */
    public static MoistAir of(double tempC, double rhPct, double pressurePa) {
        return new MoistAir(tempC, rhPct, pressurePa, VapourFormula.DEFAULT);
    }

    /**
     * Air known by a dry and an aspirated wet thermometer, with the default formulas:
     * {@code W = ((2501 − 2.326 t*) Wₛ(t*) − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)}.
     *
     * @param tempC dry bulb, °C
     * @param wetBulbC wet bulb, °C, not above the dry bulb; over water also below 0 °C
     * @param pressurePa Pa
     * @throws IllegalArgumentException outside the ranges, or if the pair would need less than no vapour
     */
    public static MoistAir ofWetBulb(double tempC, double wetBulbC, double pressurePa) {
        new ValidRange("wetBulbC", TEMPERATURE.min(), TEMPERATURE.require(tempC) + 1e-9, "°C").require(wetBulbC);
        double ratio = ratioAtWetBulb(tempC, wetBulbC, pressurePa, VapourFormula.DEFAULT);
        double vapourPa = pressurePa * ratio / (MOLAR_MASS_RATIO + ratio);
        double rhPct = 100 * vapourPa / VapourFormula.DEFAULT.saturationPa(tempC, pressurePa);
        return of(tempC, Math.min(rhPct, 100), pressurePa);
    }

    /** The same air under other formulas. */
    public MoistAir with(VapourFormula other) {
        return new MoistAir(tempC, rhPct, pressurePa, other);
    }

    /** Vapour pressure, Pa: {@code e = RH/100 · e'ₛ(t)}. */
    public double vapourPressurePa() {
        return rhPct / 100 * formula.saturationPa(tempC, pressurePa);
    }

    /**
     * Dew point over water, °C: where {@code e'ₛ(t_d) = e}, found by Newton's method, exact to the formula.
     *
     * @throws IllegalArgumentException if there is no vapour or the dew point is below −40 °C
     */
    public double dewPointC() {
        return formula.dewPointC(vapourPressurePa(), pressurePa);
    }

    /** Absolute humidity, g/m³: {@code 1000 e / (461.52 T)}. */
    public double absoluteHumidityGPerM3() {
        return 1000 * vapourPressurePa() / (VAPOUR_CONSTANT * (tempC + ZERO_C));
    }

    /** Humidity ratio (mixing ratio), kg of water per kg of dry air: {@code W = 0.621945 e / (p − e)}. */
    public double humidityRatio() {
        return ratio(vapourPressurePa(), pressurePa);
    }

    /** Humidity ratio, g of water per kg of dry air. */
    public double humidityRatioGPerKg() {
        return 1000 * humidityRatio();
    }

    /** Enthalpy above dry air and liquid water at 0 °C, kJ per kg of dry air: {@code 1.006 t + W (2501 + 1.86 t)}. */
    public double enthalpyKJPerKg() {
        return DRY_HEAT * tempC + humidityRatio() * (LATENT_HEAT + VAPOUR_HEAT * tempC);
    }

    /**
     * Thermodynamic wet bulb, °C, over water also below 0 °C: the {@code t*} at which {@link #ofWetBulb} gives this air back.
     *
     * @throws IllegalArgumentException if the wet bulb is below −40 °C
     */
    public double wetBulbC() {
        double ratio = humidityRatio();
        double low = TEMPERATURE.min();
        double high = tempC;
        if (ratioAtWetBulb(tempC, low, pressurePa, formula) > ratio) {
            throw new IllegalArgumentException("wet bulb of " + tempC + " °C, " + rhPct + " % is below " + low + " °C");
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            boolean tooWet = ratioAtWetBulb(tempC, middle, pressurePa, formula) > ratio;
            low = tooWet ? low : middle;
            high = tooWet ? middle : high;
        }
        return (low + high) / 2;
    }

    /**
     * Whether water condenses on a surface of this temperature: the surface is at or below the dew point.
     *
     * @param surfaceC °C, inside {@link #SURFACE}
     * @throws IllegalArgumentException outside the range
     */
    public boolean condensesOn(double surfaceC) {
        return vapourPressurePa() >= saturationAt(surfaceC);
    }

    /**
     * Relative humidity of the same vapour at another temperature, %: what a heated or cold bed feels,
     * {@code RH_b = RH · e'ₛ(t) / e'ₛ(t_b)}.
     *
     * @param surfaceC °C, above the dew point
     * @throws IllegalArgumentException outside the range, or below the dew point, where water condenses and no humidity is left to state
     */
    public double rhPctAt(double surfaceC) {
        double atSurface = 100 * vapourPressurePa() / saturationAt(surfaceC);
        if (atSurface > 100 + 1e-9) {
            throw new IllegalArgumentException("surfaceC " + surfaceC + " °C is below the dew point " + dewPointC()
                    + " °C: water condenses there");
        }
        return Math.min(atSurface, 100);
    }

    private double saturationAt(double surfaceC) {
        return formula.saturationPa(SURFACE.require(surfaceC), pressurePa);
    }

    private static double ratio(double vapourPa, double pressurePa) {
        return MOLAR_MASS_RATIO * vapourPa / (pressurePa - vapourPa);
    }

    private static double ratioAtWetBulb(double tempC, double wetBulbC, double pressurePa, VapourFormula formula) {
        double saturated = ratio(formula.saturationPa(wetBulbC, pressurePa), pressurePa);
        double evaporation = LATENT_HEAT - (LIQUID_HEAT - VAPOUR_HEAT) * wetBulbC;
        return (evaporation * saturated - DRY_HEAT * (tempC - wetBulbC))
                / (LATENT_HEAT + VAPOUR_HEAT * tempC - LIQUID_HEAT * wetBulbC);
    }
}
