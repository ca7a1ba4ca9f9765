package org.tableweather.analyzers.standard.climate;

import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;

/**
 * A reading after its instrument's correction.
 *
 * @param raw as read
 * @param value corrected; a humidity ends at 0 and 100 %
 * @param standardUncertainty of the corrected value; empty when neither an accuracy nor a known reference tells
 * @param degreesOfFreedom of that uncertainty, infinite when it is taken as exact
 * @param kind how it was corrected
 * @param extrapolated whether the reading lies outside what was calibrated
 */
public record CorrectedReading(
        double raw,
        double value,
        OptionalDouble standardUncertainty,
        double degreesOfFreedom,
        InstrumentCorrection.Kind kind,
        boolean extrapolated) {

    /** The value with its uncertainty, where that is known. */
    public Optional<UncertainValue> uncertain() {
        return standardUncertainty.isPresent()
                ? Optional.of(new UncertainValue(value, standardUncertainty.getAsDouble(), degreesOfFreedom))
                : Optional.empty();
    }
}
