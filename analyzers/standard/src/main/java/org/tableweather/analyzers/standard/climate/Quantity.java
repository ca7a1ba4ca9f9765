package org.tableweather.analyzers.standard.climate;

import java.util.OptionalDouble;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Instrument;

/** What an instrument reads. */
public enum Quantity {
    /** Air temperature, °C; differences in K. */
    TEMPERATURE("temperature", 0, 2),
    /**
     * Relative humidity, %. A polymer sensor comes back from damp or dry air a little off and does not repeat itself exactly, ± 0.8 %
     * for a good one; no correction takes that away.
     *
     * @source SensirionSHT3x
     */
    HUMIDITY("humidity", 0.8, 10);

    private final String schemaName;
    private final double hysteresisHalfWidth;
    private final double nearby;

    Quantity(String schemaName, double hysteresisHalfWidth, double nearby) {
        this.schemaName = schemaName;
        this.hysteresisHalfWidth = hysteresisHalfWidth;
        this.nearby = nearby;
    }

    /** The name in contributions. */
    public String schemaName() {
        return schemaName;
    }

    /** What no correction takes away, ±. */
    double hysteresisHalfWidth() {
        return hysteresisHalfWidth;
    }

    /** Readings closer together than this say nothing of a slope: 2 K, 10 %RH (common practice, no source). */
    double nearby() {
        return nearby;
    }

    boolean isOf(Calibration calibration) {
        return schemaName.equals(calibration.quantity());
    }

    OptionalDouble statedAccuracy(Instrument instrument) {
        return this == TEMPERATURE ? instrument.accuracyC() : instrument.accuracyRhPct();
    }

    OptionalDouble resolution(Instrument instrument) {
        return this == TEMPERATURE ? instrument.resolutionC() : instrument.resolutionRhPct();
    }
}
