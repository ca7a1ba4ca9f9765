package org.tableweather.schema.climate;

/** Degrees Fahrenheit, accepted at the edges; °C inside. */
public final class Fahrenheit {
    private static final ValidRange ABOVE_ABSOLUTE_ZERO = new ValidRange("tempF", -459.67, 1e6, "°F");
    private static final ValidRange CELSIUS_ABOVE_ABSOLUTE_ZERO = new ValidRange("tempC", -273.15, 1e6, "°C");
    private static final double KELVIN_PER_STEP = 5.0 / 9.0;

    private Fahrenheit() {}

    /**
     * Degrees Celsius: {@code t/°C = (t/°F − 32) · 5/9}.
     *
     * @param tempF at least absolute zero, −459.67 °F
     * @throws IllegalArgumentException below absolute zero
     * @source NistSp811
     */
    public static double toCelsius(double tempF) {
        return (ABOVE_ABSOLUTE_ZERO.require(tempF) - 32) / 1.8;
    }

    /**
     * Degrees Fahrenheit: {@code t/°F = 1.8 t/°C + 32}.
     *
     * @param tempC at least absolute zero, −273.15 °C
     * @throws IllegalArgumentException below absolute zero
     * @source NistSp811
     */
    public static double fromCelsius(double tempC) {
        return 1.8 * CELSIUS_ABOVE_ABSOLUTE_ZERO.require(tempC) + 32;
    }

    /**
     * Kelvin of a difference in °F, where the 32 has no place: {@code Δ/K = Δ/°F · 5/9}.
     *
     * @source NistSp811
     */
    public static double stepToKelvin(double stepF) {
        return stepF * KELVIN_PER_STEP;
    }
}
