package org.tableweather.analyzers.standard.catalogue;

import java.util.EnumSet;
import java.util.Set;
import java.util.function.Function;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Kind;

/**
 * The columns of a session's summary, each from an origin and in a unit that all sessions share, so that their moments
 * merge and keep their digits. The order is part of the summary's content.
 */
public enum Measure {
    /** {@code h = (RH − 50 %) / 10 %}. */
    HUMIDITY(trials -> from(trials, TrialNumber.CLIMATE_RH_PCT, 50, 10)),
    /** h², of the trial's own h. */
    HUMIDITY_SQUARED(Measure::humiditySquared),
    /** {@code (T − 21 °C) / 5 K}. */
    TEMPERATURE(trials -> from(trials, TrialNumber.CLIMATE_TEMP_C, 21, 5)),
    /** Approach angle − 45°, degrees. */
    APPROACH_ANGLE(trials -> from(trials, TrialNumber.APPROACH_ANGLE_DEG, 45, 1)),
    /** Approach speed − 2 m/s, m/s. */
    APPROACH_SPEED(trials -> from(trials, TrialNumber.APPROACH_SPEED_MPS, 2, 1)),
    /** Side spin, revolutions per second. */
    SIDE_SPIN(trials -> from(trials, TrialNumber.SIDE_SPIN_RPS, 0, 1)),
    /** Angle of departure from the last rail, degrees. */
    FINAL_REBOUND_ANGLE(Measure::lastReboundAngle),
    /** Landing offset, diamonds. */
    LANDING_OFFSET(trials -> from(trials, TrialNumber.LANDING_OFFSET_DIA, 0, 1)),
    /** Rebound speed over approach speed at the first rail. */
    SPEED_KEPT(Measure::speedKept),
    /** Rolling spin over that of natural roll. */
    ROLL_RATIO(trials -> from(trials, TrialNumber.ROLL_RATIO, 0, 1));

    /** What they are read from. */
    static final Set<TrialNumber> NUMBERS = Set.copyOf(EnumSet.of(
            TrialNumber.CLIMATE_RH_PCT,
            TrialNumber.CLIMATE_TEMP_C,
            TrialNumber.APPROACH_ANGLE_DEG,
            TrialNumber.APPROACH_SPEED_MPS,
            TrialNumber.SIDE_SPIN_RPS,
            TrialNumber.REBOUND_ANGLE_DEG,
            TrialNumber.REBOUND_SPEED_MPS,
            TrialNumber.FINAL_REBOUND_ANGLE_DEG,
            TrialNumber.LANDING_OFFSET_DIA,
            TrialNumber.ROLL_RATIO));

    /** Numbers beyond this are no measurement, and their squares could overflow. */
    private static final double LARGEST = 1e9;

    private final Function<TrialColumns, double[]> reading;

    Measure(Function<TrialColumns, double[]> reading) {
        this.reading = reading;
    }

    /** The number of every trial; NaN where not measured. */
    public double[] of(TrialColumns trials) {
        return reading.apply(trials);
    }

    private static double bounded(double number) {
        return Math.abs(number) <= LARGEST ? number : Double.NaN;
    }

    /** Its bit in a mask of measured columns. */
    public int bit() {
        return 1 << ordinal();
    }

    private static double[] from(TrialColumns trials, TrialNumber number, double origin, double unit) {
        double[] read = trials.numbers(number);
        double[] column = new double[trials.size()];
        for (int row = 0; row < column.length; row++) {
            column[row] = bounded((read[row] - origin) / unit);
        }
        return column;
    }

    private static double[] humiditySquared(TrialColumns trials) {
        double[] column = HUMIDITY.of(trials);
        for (int row = 0; row < column.length; row++) {
            column[row] = bounded(column[row] * column[row]);
        }
        return column;
    }

    /** As {@link org.tableweather.schema.record.Trial#lastReboundAngleDeg()}. */
    private static double[] lastReboundAngle(TrialColumns trials) {
        double[] last = trials.numbers(TrialNumber.FINAL_REBOUND_ANGLE_DEG);
        double[] first = trials.numbers(TrialNumber.REBOUND_ANGLE_DEG);
        double[] column = new double[trials.size()];
        for (int row = 0; row < column.length; row++) {
            column[row] = bounded(Double.isNaN(last[row]) && trials.kind(row) == Kind.REBOUND ? first[row] : last[row]);
        }
        return column;
    }

    private static double[] speedKept(TrialColumns trials) {
        double[] before = trials.numbers(TrialNumber.APPROACH_SPEED_MPS);
        double[] after = trials.numbers(TrialNumber.REBOUND_SPEED_MPS);
        double[] column = new double[trials.size()];
        for (int row = 0; row < column.length; row++) {
            column[row] = before[row] > 0 ? bounded(after[row] / before[row]) : Double.NaN;
        }
        return column;
    }
}
