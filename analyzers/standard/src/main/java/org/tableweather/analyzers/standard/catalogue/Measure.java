package org.tableweather.analyzers.standard.catalogue;

import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;

/**
 * The columns of a session's summary, each from an origin and in a unit that all sessions share, so that their moments
 * merge and keep their digits. The order is part of the summary's content.
 */
public enum Measure {
    /** {@code h = (RH − 50 %) / 10 %}. */
    HUMIDITY(trial -> (trial.climate().rhPct() - 50) / 10),
    /** h², of the trial's own h. */
    HUMIDITY_SQUARED(trial -> HUMIDITY.of(trial) * HUMIDITY.of(trial)),
    /** {@code (T − 21 °C) / 5 K}. */
    TEMPERATURE(trial -> (trial.climate().tempC() - 21) / 5),
    /** Approach angle − 45°, degrees. */
    APPROACH_ANGLE(trial -> trial.approachAngleDeg() - 45),
    /** Approach speed − 2 m/s, m/s. */
    APPROACH_SPEED(trial -> trial.approachSpeedMps() - 2),
    /** Side spin, revolutions per second. */
    SIDE_SPIN(Trial::sideSpinRps),
    /** Angle of departure from the last rail, degrees. */
    FINAL_REBOUND_ANGLE(Trial::lastReboundAngleDeg),
    /** Landing offset, diamonds. */
    LANDING_OFFSET(Trial::landingOffsetDia),
    /** Rebound speed over approach speed at the first rail. */
    SPEED_KEPT(trial -> trial.approachSpeedMps() > 0 ? trial.reboundSpeedMps() / trial.approachSpeedMps() : Double.NaN),
    /** Rolling spin over that of natural roll. */
    ROLL_RATIO(Trial::rollRatio);

    /** Numbers beyond this are no measurement, and their squares could overflow. */
    private static final double LARGEST = 1e9;

    private final ToDoubleFunction<Trial> reading;

    Measure(ToDoubleFunction<Trial> reading) {
        this.reading = reading;
    }

    /** The number; NaN when not measured. */
    public double of(Trial trial) {
        double number = reading.applyAsDouble(trial);
        return Math.abs(number) <= LARGEST ? number : Double.NaN;
    }

    /** Its bit in a mask of measured columns. */
    public int bit() {
        return 1 << ordinal();
    }
}
