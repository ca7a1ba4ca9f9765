package org.tableweather.analyzers.standard.climate;

import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.climate.SaltSolution;
import org.tableweather.schema.record.Calibration;

/**
 * One comparison of an instrument with something better known.
 *
 * @param reading what it read
 * @param reference what it should have read
 * @param referenceUncertainty standard uncertainty of the reference; empty when not known
 * @param kind what the reference was
 */
public record CalibrationPoint(double reading, double reference, OptionalDouble referenceUncertainty, Kind kind) {

    /** What an instrument was held against. */
    public enum Kind {
        /** A saturated salt solution: its error has nothing to do with that of another salt. */
        SALT,
        /** Another instrument: its error is the same at every point. */
        INSTRUMENT
    }

    public CalibrationPoint {
        if (!Double.isFinite(reading) || !Double.isFinite(reference)) {
            throw new IllegalArgumentException(
                    "reading " + reading + ", reference " + reference + ": both must be finite");
        }
    }

    /**
     * A hygrometer in a closed box over a saturated salt solution.
     *
     * @param salt which
     * @param tempC of solution and air, °C
     * @param reading what it read, %
     * @source Greenspan1977
     */
    public static CalibrationPoint over(SaltSolution salt, double tempC, double reading) {
        return new CalibrationPoint(
                reading, salt.rhPct(tempC), OptionalDouble.of(salt.standardUncertaintyPct(tempC)), Kind.SALT);
    }

    /**
     * A comparison as contributed. A salt whose uncertainty is not stated gets that of its temperature, or where that is not stated
     * either (or outside the table), the largest tabulated for it.
     */
    public static CalibrationPoint of(Calibration calibration) {
        Optional<SaltSolution> salt = calibration.salt().flatMap(SaltSolution::ofFormula);
        OptionalDouble stated = calibration.standardUncertainty();
        boolean unstated = stated.isEmpty() && salt.isPresent();
        return new CalibrationPoint(
                calibration.reading(),
                calibration.referenceValue(),
                unstated ? OptionalDouble.of(uncertainty(salt.get(), calibration.saltTempC())) : stated,
                calibration.salt().isPresent() ? Kind.SALT : Kind.INSTRUMENT);
    }

    /** What to add to the reading. */
    public double correction() {
        return reference - reading;
    }

    private static double uncertainty(SaltSolution salt, OptionalDouble tempC) {
        return tempC.isPresent() && SaltSolution.TEMPERATURE.contains(tempC.getAsDouble())
                ? salt.standardUncertaintyPct(tempC.getAsDouble())
                : largestUncertainty(salt);
    }

    private static double largestUncertainty(SaltSolution salt) {
        double largest = 0;
        for (double t = SaltSolution.TEMPERATURE.min(); t <= SaltSolution.TEMPERATURE.max(); t += 5) {
            largest = Math.max(largest, salt.standardUncertaintyPct(t));
        }
        return largest;
    }
}
