package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.List;

/** Finds columns that the constant and the columns before them determine. */
final class Collinearity {

    /** A column stays when at least this share of its sum of squares is its own. */
    private static final double LEAST_SHARE = 1e-9;

    private Collinearity() {}

    /**
     * The columns with something of their own: Cholesky in the given order, of the cross-products scaled to a unit
     * diagonal; the first pivot, the constant's, is taken by centring.
     *
     * @param total moments of all rows
     * @param columns how many of the leading columns to look at
     */
    static List<Integer> independent(Moments total, int columns) {
        List<Integer> kept = new ArrayList<>();
        List<double[]> factor = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            double[] row = new double[factor.size() + 1];
            double own = total.cross(i, i);
            for (int k = 0; k < factor.size(); k++) {
                row[k] = reduced(total, i, kept.get(k), row, factor.get(k), k);
                own -= row[k] * row[k];
            }
            double square = total.cross(i, i) + total.n() * total.mean(i) * total.mean(i);
            if (own > LEAST_SHARE * square) {
                row[factor.size()] = Math.sqrt(own);
                factor.add(row);
                kept.add(i);
            }
        }
        return kept;
    }

    private static double reduced(Moments total, int i, int j, double[] row, double[] other, int k) {
        double sum = total.cross(i, j);
        for (int l = 0; l < k; l++) {
            sum -= row[l] * other[l];
        }
        return sum / other[k];
    }
}
