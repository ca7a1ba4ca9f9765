package org.tableweather.schema.check;

/**
 * Dew point over water: {@code γ = ln(RH/100) + 17.62 t/(243.12 + t), t_d = 243.12 γ/(17.62 − γ)}. For the checks only;
 * within 0.1 K of the reference between 0 and 40 °C.
 *
 * @source WMO8
 */
final class DewPoint {
    private DewPoint() {}

    /**
     * Dew point.
     *
     * @param tempC air temperature, °C
     * @param rhPct relative humidity, %, above 0
     * @return °C; −∞ for dry air
     */
    static double celsius(double tempC, double rhPct) {
        double gamma = Math.log(rhPct / 100) + 17.62 * tempC / (243.12 + tempC);
        return rhPct > 0 ? 243.12 * gamma / (17.62 - gamma) : Double.NEGATIVE_INFINITY;
    }
}
