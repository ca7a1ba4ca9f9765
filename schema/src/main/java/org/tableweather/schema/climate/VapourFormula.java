package org.tableweather.schema.climate;

/**
 * Which formulas stand behind a value of moist air: the saturation curve and the enhancement factor.
 *
 * @param curve saturation pressure over water
 * @param enhancement factor for the presence of air
 */
public record VapourFormula(SaturationCurve curve, Enhancement enhancement) {

    /** What is used wherever nothing else is said: Hyland–Wexler over water, without enhancement factor. */
    public static final VapourFormula DEFAULT = new VapourFormula(SaturationCurve.HYLAND_WEXLER, Enhancement.NONE);

    /** The formulas in words: {@code Hyland–Wexler 1983 over water, no enhancement factor}. */
    public String label() {
        return curve.label() + ", " + enhancement.label();
    }

    /**
     * Vapour pressure of saturated air: {@code e'ₛ = f(p) · eₛ(t)}.
     *
     * @param tempC °C, where the curve holds
     * @param pressurePa Pa, inside {@link MoistAir#PRESSURE}
     * @return Pa
     * @throws IllegalArgumentException outside the ranges
     */
    public double saturationPa(double tempC, double pressurePa) {
        return enhancement.factor(pressurePa) * curve.pressurePa(tempC);
    }

    /**
     * Its slope with temperature, {@code f(p) · deₛ/dT}.
     *
     * @param tempC °C, where the curve holds
     * @param pressurePa Pa, inside {@link MoistAir#PRESSURE}
     * @return Pa/K
     * @throws IllegalArgumentException outside the ranges
     */
    public double saturationSlopePaPerK(double tempC, double pressurePa) {
        return enhancement.factor(pressurePa) * curve.slopePaPerK(tempC);
    }

    /**
     * Dew point over water: the temperature at which this vapour saturates.
     *
     * @param vapourPressurePa Pa, above 0
     * @param pressurePa Pa, inside {@link MoistAir#PRESSURE}
     * @return °C
     * @throws IllegalArgumentException if the dew point lies where the curve does not hold, or there is no vapour
     */
    public double dewPointC(double vapourPressurePa, double pressurePa) {
        return curve.temperatureC(vapourPressurePa / enhancement.factor(pressurePa));
    }
}
