package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;

/**
 * The parameters of {@link MakeRate}, read.
 *
 * @param shot empty: the shot with the most usable attempts
 * @param bent whether the log odds may bend over humidity
 * @param temperature whether temperature stands beside humidity
 * @param points of quadrature
 * @param range of the curve
 */
record RateQuestion(Optional<String> shot, boolean bent, boolean temperature, int points, AskedRange range) {

    static final String SHOT = "shot";
    static final String SHAPE = "shape";
    static final String LINEAR = "linear";
    static final String QUADRATIC = "quadratic";
    static final String TEMPERATURE = "temperature";
    static final String ADJUSTED = "adjusted";
    static final String IGNORED = "ignored";
    static final String POINTS = "quadrature_points";
    static final int MOST_POINTS = 50;

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static RateQuestion of(Parameters parameters) {
        double points = parameters.number(POINTS).orElse(1.0);
        if (points < 1 || points > MOST_POINTS) {
            throw new IllegalArgumentException("parameter " + POINTS + " = " + Figures.plain(points)
                    + " is outside 1 to " + MOST_POINTS + ": set a whole number in between");
        }
        if (points != Math.rint(points)) {
            throw new IllegalArgumentException(
                    "parameter " + POINTS + " = " + Figures.plain(points) + " is no whole number: set one");
        }
        return new RateQuestion(
                parameters.text(SHOT),
                parameters.text(SHAPE).orElse(LINEAR).equals(QUADRATIC),
                parameters.text(TEMPERATURE).orElse(ADJUSTED).equals(ADJUSTED),
                (int) points,
                AskedRange.of(parameters));
    }

    /** The same question without temperature. */
    RateQuestion withoutTemperature() {
        return new RateQuestion(shot, bent, false, points, range);
    }

    /** Coefficients of the model, the intercept included. */
    int coefficients() {
        return 2 + (bent ? 1 : 0) + (temperature ? 1 : 0);
    }

    /** Columns of a cell, without that of ones. */
    double[] columns(Cell cell) {
        return columns(cell.h(), cell.t());
    }

    private double[] columns(double h, double t) {
        double[] columns = new double[coefficients() - 1];
        columns[0] = h;
        if (bent) {
            columns[1] = h * h;
        }
        if (temperature) {
            columns[columns.length - 1] = t;
        }
        return columns;
    }

    /** Weights of the coefficients at this humidity and 21 °C. */
    double[] row(double rhPct) {
        double[] columns = columns((rhPct - 50) / 10, 0);
        double[] row = new double[columns.length + 1];
        row[0] = 1;
        System.arraycopy(columns, 0, row, 1, columns.length);
        return row;
    }
}
