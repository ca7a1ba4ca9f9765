package org.tableweather.analyzers.standard.climate;

import org.tableweather.analyzers.standard.uncertainty.UncertainInputs;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.climate.VapourFormula;

/**
 * A reading of the room's air with its uncertainties.
 *
 * @param tempC temperature, °C, standard uncertainty in K
 * @param rhPct relative humidity, %, standard uncertainty in %RH
 * @param pressurePa pressure, Pa, taken as exact: its part is small
 * @param correlation of the errors of temperature and humidity, −1 to 1; 0 for two sensors that know nothing of each other
 * @param formula which formulas its values use
 */
public record AirReading(
        UncertainValue tempC, UncertainValue rhPct, double pressurePa, double correlation, VapourFormula formula) {

    /** Names of its two inputs in a budget. */
    static final String TEMPERATURE = "tempC";

    static final String HUMIDITY = "rhPct";

    public AirReading {
        if (!(Math.abs(correlation) <= 1)) {
            throw new IllegalArgumentException("correlation " + correlation + " is outside -1 to 1");
        }
    }

    /** A reading at a pressure, errors independent, default formulas. */
    public static AirReading of(UncertainValue tempC, UncertainValue rhPct, double pressurePa) {
        return new AirReading(tempC, rhPct, pressurePa, 0, VapourFormula.DEFAULT);
    }

    /** The state of the air as read. */
    public MoistAir air() {
        return new MoistAir(tempC.value(), rhPct.value(), pressurePa, formula);
    }

    UncertainInputs inputs() {
        return UncertainInputs.none()
                .and(TEMPERATURE, tempC)
                .and(HUMIDITY, rhPct)
                .correlated(TEMPERATURE, HUMIDITY, correlation);
    }
}
