package org.tableweather.schema.climate;

import java.util.OptionalDouble;

/**
 * Heat index of the US National Weather Service: how hot shaded, still air feels to someone at light work.
 *
 * <p>The service's algorithm first takes a simple formula, already averaged with the air temperature; from 80 °F on the regression
 * with its adjustments for dry and for humid air. The service's printed chart is the raw regression without the adjustments.
 *
 * @source NwsHeatIndex
 * @source Rothfusz1990
 */
public final class HeatIndex {
    /** Air temperatures; 112 °F is the upper end of the published adjustments. */
    public static final ValidRange TEMPERATURE = new ValidRange("tempF", 40, 112, "°F");

    /** Largest value on the printed chart, °F, and half a degree of rounding: further out the regression is not valid. */
    public static final double CHART_END_F = 137.5;

    private static final double REGRESSION_FROM_F = 80;

    private HeatIndex() {}

    /** How the service sorts heat; the lower bounds are 80, 90, 103 and 125 °F (older charts: 105 and 130 for the last two). */
    public enum Level {
        /** Below 80 °F. */
        NONE(Double.NEGATIVE_INFINITY),
        /** From 80 °F. */
        CAUTION(80),
        /** From 90 °F. */
        EXTREME_CAUTION(90),
        /** From 103 °F. */
        DANGER(103),
        /** From 125 °F. */
        EXTREME_DANGER(125);

        private final double fromF;

        Level(double fromF) {
            this.fromF = fromF;
        }

        /** Lower bound, °F. */
        public double fromF() {
            return fromF;
        }

        private static Level of(double heatIndexF) {
            Level found = NONE;
            for (Level level : values()) {
                found = heatIndexF >= level.fromF ? level : found;
            }
            return found;
        }
    }

    /**
     * Heat index by the service's algorithm.
     *
     * @param tempF air temperature, °F, inside {@link #TEMPERATURE}
     * @param rhPct relative humidity, %, 0 to 100
     * @return °F
     * @throws IllegalArgumentException outside the ranges, or where the value lies beyond the printed chart ({@link #CHART_END_F})
     */
    public static double fahrenheit(double tempF, double rhPct) {
        return onChart(tempF, rhPct)
                .orElseThrow(
                        () -> new IllegalArgumentException("heat index of " + tempF + " °F, " + rhPct + " % is above "
                                + CHART_END_F + " °F, beyond the printed chart: extreme danger, without a number"));
    }

    /**
     * Heat index by the service's algorithm, empty where the value lies beyond the printed chart.
     *
     * @param tempF air temperature, °F, inside {@link #TEMPERATURE}
     * @param rhPct relative humidity, %, 0 to 100
     * @return °F
     * @throws IllegalArgumentException outside the ranges
     */
    public static OptionalDouble onChart(double tempF, double rhPct) {
        double value = algorithm(tempF, rhPct);
        return value > CHART_END_F ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * Heat index by the service's algorithm, in °C.
     *
     * @param tempC air temperature, °C
     * @param rhPct relative humidity, %
     * @throws IllegalArgumentException as {@link #fahrenheit}
     */
    public static double celsius(double tempC, double rhPct) {
        return Fahrenheit.toCelsius(fahrenheit(Fahrenheit.fromCelsius(tempC), rhPct));
    }

    /**
     * How the service sorts this air; extreme danger also beyond the chart, where there is no number.
     *
     * @param tempC air temperature, °C; below 40 °F always {@link Level#NONE}
     * @param rhPct relative humidity, %
     * @throws IllegalArgumentException above 112 °F or outside 0 to 100 %
     */
    public static Level level(double tempC, double rhPct) {
        double tempF = Fahrenheit.fromCelsius(tempC);
        return tempF < TEMPERATURE.min() ? Level.NONE : Level.of(algorithm(tempF, rhPct));
    }

    /**
     * The regression alone, as on the printed chart (80 to 110 °F, 40 to 100 %).
     *
     * @param tempF °F
     * @param rhPct %
     * @return °F
     * @source Rothfusz1990
     */
    static double regression(double tempF, double rhPct) {
        double t = tempF;
        double r = rhPct;
        return -42.379
                + 2.04901523 * t
                + 10.14333127 * r
                - 0.22475541 * t * r
                - 0.00683783 * t * t
                - 0.05481717 * r * r
                + 0.00122874 * t * t * r
                + 0.00085282 * t * r * r
                - 0.00000199 * t * t * r * r;
    }

    private static double algorithm(double tempF, double rhPct) {
        TEMPERATURE.require(tempF);
        MoistAir.HUMIDITY.require(rhPct);
        double simple = 0.5 * (tempF + 61 + 1.2 * (tempF - 68) + 0.094 * rhPct);
        return simple < REGRESSION_FROM_F ? simple : regression(tempF, rhPct) + adjustment(tempF, rhPct);
    }

    private static double adjustment(double tempF, double rhPct) {
        if (rhPct < 13 && tempF >= 80 && tempF <= 112) {
            return -(13 - rhPct) / 4 * Math.sqrt((17 - Math.abs(tempF - 95)) / 17);
        }
        if (rhPct > 85 && tempF >= 80 && tempF <= 87) {
            return (rhPct - 85) / 10 * ((87 - tempF) / 5);
        }
        return 0;
    }
}
