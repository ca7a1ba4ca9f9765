package org.tableweather.schema.record;

import com.fasterxml.jackson.annotation.JsonIgnore;

/**
 * The room air that a trial is taken to have felt.
 *
 * @param tempC air temperature, °C; NaN when not known
 * @param rhPct relative humidity over water, %; NaN when not known
 * @param source which reading it is
 */
public record Climate(double tempC, double rhPct, ClimateSource source) {

    /** Nothing known. */
    public static final Climate NONE = new Climate(Double.NaN, Double.NaN, ClimateSource.NONE);

    /** Whether temperature and humidity are both known. */
    @JsonIgnore
    public boolean isKnown() {
        return !Double.isNaN(tempC) && !Double.isNaN(rhPct);
    }
}
