package org.tableweather.schema.caution;

/**
 * Something that is plugged in to hold a climate.
 *
 * @param name for people
 * @param kind what it does
 * @param watts rated power, W, above 0
 */
public record Appliance(String name, Kind kind, double watts) {

    /** What an appliance does. */
    public enum Kind {
        HEATER,
        HUMIDIFIER,
        DEHUMIDIFIER,
        COOLER,
        OTHER
    }

    public Appliance {
        if (!(watts > 0) || !Double.isFinite(watts)) {
            throw new IllegalArgumentException(name + ": watts " + watts + " must be above 0");
        }
    }
}
