package org.tableweather.analyzers.standard.statistics.decay;

import java.util.List;

/**
 * The levels of one step at a given rate: least squares on one or two columns, weighted by the number of observations. The
 * columns are made orthogonal first, so that a slow decay, nearly constant, costs no digits.
 */
final class StepLevels {

    private final List<DecayPoint> points;
    private final DecayStart start;
    /** {@code e^(−kt)} of each point. */
    private final double[] decayed;
    /** First column, or the only one; scaled to nothing. */
    private final double[] first;
    /** Second column less its projection on the first; empty when there is one. */
    private final double[] second;

    private final double firstSquare;
    private final double secondSquare;
    private final double overlap;
    /** The levels, in the order of the columns. */
    final double[] levels;
    /** Residual sum of squares, within points included. */
    final double rest;
    /** Half its derivative by k. */
    final double restSlope;

    StepLevels(List<DecayPoint> points, DecayStart start, double rate) {
        this.points = points;
        this.start = start;
        decayed = points.stream()
                .mapToDouble(point -> StrictMath.exp(-rate * point.hours()))
                .toArray();
        first = column(0);
        firstSquare = product(first, first);
        double[] raw = start.columns == 2 ? column(1) : new double[points.size()];
        overlap = firstSquare > 0 ? product(first, raw) / firstSquare : 0;
        second = lessProjection(raw, overlap);
        secondSquare = product(second, second);
        levels = levels();
        double[] residuals = residuals();
        rest = product(residuals, residuals)
                + points.stream().mapToDouble(DecayPoint::squares).sum();
        restSlope = -product(residuals, slopes());
    }

    private double[] column(int column) {
        double[] values = new double[decayed.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = start.column(column, decayed[i]);
        }
        return values;
    }

    private double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += points.get(i).n() * a[i] * b[i];
        }
        return sum;
    }

    private double[] lessProjection(double[] column, double share) {
        double[] left = new double[column.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = column[i] - share * first[i];
        }
        return left;
    }

    private double[] means() {
        return points.stream().mapToDouble(DecayPoint::mean).toArray();
    }

    private double[] levels() {
        double[] means = means();
        double along = firstSquare > 0 ? product(first, means) / firstSquare : 0;
        if (start.columns == 1) {
            return new double[] {along};
        }
        double across = secondSquare > 0 ? product(second, means) / secondSquare : 0;
        return new double[] {along - overlap * across, across};
    }

    private double[] residuals() {
        double[] residuals = means();
        for (int i = 0; i < residuals.length; i++) {
            for (int column = 0; column < start.columns; column++) {
                residuals[i] -= levels[column] * start.column(column, decayed[i]);
            }
        }
        return residuals;
    }

    /** Derivative of the fitted values by k, the levels held. */
    private double[] slopes() {
        double[] slopes = new double[decayed.length];
        for (int i = 0; i < slopes.length; i++) {
            for (int column = 0; column < start.columns; column++) {
                slopes[i] += levels[column]
                        * start.slope(column, decayed[i], points.get(i).hours());
            }
        }
        return slopes;
    }

    /** What of the derivative by k the levels cannot take up: sum of squares. */
    double information() {
        double[] slopes = slopes();
        double information = product(slopes, slopes);
        if (firstSquare > 0) {
            double along = product(first, slopes);
            information -= along * along / firstSquare;
        }
        if (secondSquare > 0) {
            double across = product(second, slopes);
            information -= across * across / secondSquare;
        }
        return Math.max(0, information);
    }
}
