package org.tableweather.cli.demo;

/**
 * What the invented data are made from. With {@code h = (RH − 50 %)/10 %} and {@code t = (T − 21 °C)/5 K}, the final
 * rebound angle of an attempt, in degrees from the rail's normal, is
 *
 * <pre>{@code y = b0 + b1·h + b2·h² + b3·t + (u0 + u1·h)[room] + w[session] + e}</pre>
 *
 * with (u0, u1) normal with standard deviations {@code roomSd}, {@code roomSlopeSd} and correlation
 * {@code roomCorrelation}, w and e normal with {@code sessionSd} and {@code trialSd}. Damp tightens the final rebound and
 * dry opens it: common practice, no source. All figures are invented.
 *
 * @param interceptDeg b0: mean angle at 50 %RH and 21 °C, degrees
 * @param humidityDeg b1: degrees per 10 %RH at 50 %RH
 * @param humiditySquaredDeg b2: degrees per (10 %RH)²
 * @param temperatureDeg b3: degrees per 5 K
 * @param roomSd SD of u0, degrees
 * @param roomSlopeSd SD of u1, degrees per 10 %RH
 * @param roomCorrelation of u0 and u1
 * @param sessionSd SD of w, degrees
 * @param trialSd SD of e, degrees
 */
public record Truth(
        double interceptDeg,
        double humidityDeg,
        double humiditySquaredDeg,
        double temperatureDeg,
        double roomSd,
        double roomSlopeSd,
        double roomCorrelation,
        double sessionSd,
        double trialSd) {

    /** The truth of the demonstration. */
    public static Truth ofTheDemo() {
        return new Truth(48.0, -0.9, 0.08, 0.3, 1.0, 0.25, -0.3, 0.4, 1.5);
    }

    /**
     * Mean angle in an average room, degrees.
     *
     * @param rhPct relative humidity, %
     * @param tempC air temperature, °C
     */
    public double meanDeg(double rhPct, double tempC) {
        double h = humidityUnits(rhPct);
        return interceptDeg + humidityDeg * h + humiditySquaredDeg * h * h + temperatureDeg * (tempC - 21) / 5;
    }

    /** h: tens of %RH above 50 %RH. */
    static double humidityUnits(double rhPct) {
        return (rhPct - 50) / 10;
    }
}
