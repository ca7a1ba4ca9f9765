package org.tableweather.schema.record;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One comparison of an instrument with something better known.
 *
 * @param on date
 * @param quantity {@code temperature} or {@code humidity}
 * @param method {@code saturated-salt}, {@code reference-instrument} ...
 * @param salt formula of the salt, when a saturated salt was used
 * @param saltTempC temperature of salt and air in the box, °C
 * @param referenceValue what it should have read, °C or %
 * @param reading what it read, °C or %
 * @param standardUncertainty of the reference value, K or %
 */
public record Calibration(
        LocalDate on,
        String quantity,
        Optional<String> method,
        Optional<String> salt,
        OptionalDouble saltTempC,
        double referenceValue,
        double reading,
        OptionalDouble standardUncertainty) {

    /** A comparison whose salt's temperature is not stated. */
    public Calibration(
            LocalDate on,
            String quantity,
            Optional<String> method,
            Optional<String> salt,
            double referenceValue,
            double reading,
            OptionalDouble standardUncertainty) {
        this(on, quantity, method, salt, OptionalDouble.empty(), referenceValue, reading, standardUncertainty);
    }
}
