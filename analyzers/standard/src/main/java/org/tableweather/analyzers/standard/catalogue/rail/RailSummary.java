package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * What is kept of a session: the pairs of approach and rebound as moments: by shot, by what was measured, by
 * approach angle in steps of 5° and speed in steps of 0.25 m/s.
 *
 * @param cells ordered by shot, by what was measured, then by angle and speed
 * @param noseSine sine of the nose's angle above the ball's middle; that of the specification when not stated
 * @param noseStated whether the table states the height of its nose
 * @param traits for measures of humidity that need cloth or bed
 * @param trials attempts of the session
 * @param withoutPair attempts that have no approach and rebound angle
 * @param withoutClimate pairs without humidity or temperature
 * @param withSideSpin pairs that state side spin: whose direction along the rail is not told
 * @param protocol of the session
 */
public record RailSummary(
        List<Cell> cells,
        double noseSine,
        boolean noseStated,
        SessionTraits traits,
        long trials,
        long withoutPair,
        long withoutClimate,
        long withSideSpin,
        SessionProtocol protocol) {

    public RailSummary {
        cells = List.copyOf(cells);
    }

    /**
     * Pairs of one shot of which the same was measured, and that came alike.
     *
     * @param shot id of the shot
     * @param measured what
     * @param moments of its columns, in the order of {@link Column}
     */
    public record Cell(String shot, Measured measured, Moments moments) {

        /** Mean of a column, which must be among those measured. */
        double mean(Column column) {
            return moments.mean(measured.place(column));
        }
    }

    /** Columns of the moments. */
    enum Column {
        /** Relative humidity, %. */
        RH_PCT,
        /** Air temperature, °C. */
        TEMP_C,
        /** Angle of arrival, degrees from the normal. */
        APPROACH_DEG,
        /** Rolling spin over that of natural roll; 1 when not stated. */
        ROLL,
        /** Angle of departure, degrees from the normal. */
        REBOUND_DEG,
        /** Speed of arrival, m/s. */
        SPEED_MPS,
        /** Speed of departure over speed of arrival. */
        SPEED_RATIO
    }

    /** What was measured beside the angles. */
    public enum Measured {
        /** Angles alone. */
        ANGLES(5),
        /** Angles and the speed of arrival. */
        ARRIVAL(6),
        /** Angles and both speeds. */
        SPEEDS(7);

        /** Number of columns. */
        final int columns;

        Measured(int columns) {
            this.columns = columns;
        }

        int place(Column column) {
            if (column.ordinal() >= columns) {
                throw new IllegalArgumentException(column + " was not measured");
            }
            return column.ordinal();
        }
    }
}
