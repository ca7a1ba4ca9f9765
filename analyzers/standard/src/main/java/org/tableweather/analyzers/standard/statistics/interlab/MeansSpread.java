package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.List;

/**
 * Plain mean of laboratories' means and their sum of squares about it, kept as departures from the first mean so that a
 * large common offset costs no digits.
 *
 * @param laboratories how many
 * @param origin mean of the first laboratory
 * @param offset of the mean of means from the origin
 * @param squares {@code Σ (ȳᵢ − mean of means)²}
 */
record MeansSpread(int laboratories, double origin, double offset, double squares) {

    static MeansSpread of(List<Laboratory> laboratories) {
        double origin = laboratories.get(0).mean();
        double sum = 0;
        for (Laboratory laboratory : laboratories) {
            sum += laboratory.mean() - origin;
        }
        double offset = sum / laboratories.size();
        double squares = 0;
        for (Laboratory laboratory : laboratories) {
            double apart = laboratory.mean() - origin - offset;
            squares += apart * apart;
        }
        return new MeansSpread(laboratories.size(), origin, offset, squares);
    }

    /** {@code (ȳ − mean of means) / sd of means}. */
    double standardised(Laboratory laboratory) {
        return (laboratory.mean() - origin - offset) / Math.sqrt(squares / (laboratories - 1));
    }
}
