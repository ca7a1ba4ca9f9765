package org.tableweather.cli;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tableweather.schema.climate.Fahrenheit;

/**
 * A climate as a person types it: {@code 24C 40%}, {@code 75F, 40 %RH}, {@code 40% 24°C}.
 *
 * @param tempC °C
 * @param rhPct %
 */
record TypedClimate(double tempC, double rhPct) {

    private static final String NUMBER = "([+-]?\\d+(?:\\.\\d+)?)";
    private static final Pattern TEMPERATURE = Pattern.compile(NUMBER + "\\s*°?\\s*([CF])(?![A-Z])");
    private static final Pattern HUMIDITY = Pattern.compile(NUMBER + "\\s*%\\s*(?:R\\.?H\\.?)?");
    private static final double COLDEST_C = 0;
    private static final double WARMEST_C = 45;
    private static final double DRIEST_PCT = 5;
    private static final double DAMPEST_PCT = 95;
    private static final String REMEDY =
            "give a temperature with C or F and a relative humidity with %, as \"24C 40%\" or \"75F 40%\"";

    /**
     * Reads one.
     *
     * @param option that it was typed for
     * @throws Failure when it is none, or no room's
     */
    static TypedClimate of(String option, String text) {
        String upper = text.trim().toUpperCase(Locale.ROOT);
        Matcher temperature = TEMPERATURE.matcher(upper);
        Matcher humidity = HUMIDITY.matcher(upper);
        boolean found = temperature.find() && humidity.find();
        String rest = found ? upper.replace(temperature.group(), " ").replace(humidity.group(), " ") : upper;
        if (!found || !rest.replaceAll("[\\s,;/]", "").isEmpty()) {
            throw Failure.usage(option + " " + text + " is no climate", REMEDY);
        }
        double typed = Double.parseDouble(temperature.group(1));
        boolean fahrenheit = temperature.group(2).equals("F");
        double tempC = fahrenheit ? Fahrenheit.toCelsius(typed) : typed;
        double rhPct = Double.parseDouble(humidity.group(1));
        within(option, text, tempC, COLDEST_C, WARMEST_C, fahrenheit ? "32 to 113 °F" : "0 to 45 °C");
        within(option, text, rhPct, DRIEST_PCT, DAMPEST_PCT, "5 to 95 %RH");
        return new TypedClimate(tempC, rhPct);
    }

    private static void within(String option, String text, double value, double low, double high, String bounds) {
        if (value < low || value > high) {
            throw Failure.usage(
                    option + " " + text + ": a room is within " + bounds, "give the climate of the room's air");
        }
    }
}
