package org.tableweather.analyzers.standard.catalogue.path;

import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;

/**
 * A climate that is asked about.
 *
 * @param tempC of the room's air, °C
 * @param rhPct of the room's air, %
 */
record AskedClimate(double tempC, double rhPct) {

    private static final double COLDEST_C = 0;
    private static final double WARMEST_C = 45;
    private static final double DRIEST_PCT = 5;
    private static final double DAMPEST_PCT = 95;

    static ParameterInfo temperature(String name, String which, double standard) {
        return new ParameterInfo(
                name,
                "air temperature of the " + which + " climate",
                "Cel",
                Figures.plain(standard),
                java.util.List.of());
    }

    static ParameterInfo humidity(String name, String which, double standard) {
        return new ParameterInfo(
                name,
                "relative humidity of the " + which + " climate",
                "%",
                Figures.plain(standard),
                java.util.List.of());
    }

    /**
     * Reads one.
     *
     * @throws IllegalArgumentException for a value that no room has; the message holds name, value, bound and remedy
     */
    static AskedClimate of(Parameters parameters, String temperature, String humidity) {
        return new AskedClimate(
                within(parameters, temperature, COLDEST_C, WARMEST_C, "°C", "a room's temperature"),
                within(parameters, humidity, DRIEST_PCT, DAMPEST_PCT, "%RH", "a room's relative humidity"));
    }

    private static double within(
            Parameters parameters, String name, double low, double high, String unit, String what) {
        double value = parameters.number(name).orElseThrow(() -> missing(name));
        if (value < low || value > high) {
            throw new IllegalArgumentException("parameter " + name + " = " + Figures.plain(value) + " is outside "
                    + Figures.plain(low) + " to " + Figures.plain(high) + " " + unit + ": set " + what);
        }
        return value;
    }

    private static IllegalArgumentException missing(String name) {
        return new IllegalArgumentException("parameter " + name + " is not set: set it");
    }

    /** Temperature in the model's steps. */
    double t() {
        return (tempC - 21) / 5;
    }

    String words() {
        return Figures.plain(tempC) + " °C and " + Figures.plain(rhPct) + " %RH";
    }
}
