package org.tableweather.schema.record;

import java.time.Instant;

/**
 * One reading of an instrument: a row of {@code climate.csv}.
 *
 * @param instrument id of the instrument in the same contribution
 * @param time when it was read
 * @param tempC air temperature, °C
 * @param rhPct relative humidity over water, %
 * @param pressureHpa station pressure, hPa; NaN when not measured
 * @param bedC temperature of the bed at the same time, °C; NaN when not measured
 * @param placement where the sensor was ({@code room}, {@code bed} ...); empty when not stated
 */
public record ClimateReading(
        String instrument,
        Instant time,
        double tempC,
        double rhPct,
        double pressureHpa,
        double bedC,
        String placement) {

    /** A reading without a channel for the bed. */
    public ClimateReading(
            String instrument, Instant time, double tempC, double rhPct, double pressureHpa, String placement) {
        this(instrument, time, tempC, rhPct, pressureHpa, Double.NaN, placement);
    }
}
