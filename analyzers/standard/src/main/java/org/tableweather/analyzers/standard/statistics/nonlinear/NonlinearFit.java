package org.tableweather.analyzers.standard.statistics.nonlinear;

import java.util.List;

/**
 * A fitted nonlinear mixed model.
 *
 * @param coefficients β
 * @param covariance of β
 * @param roomDeviations standard deviations of the rooms' effects, in the order of their columns; 0 on the boundary
 * @param sessionDeviations of the sessions' effects likewise
 * @param rooms each room's effects
 * @param criterion minus twice the restricted log likelihood of the last linearisation, without constants
 * @param linearisations how often the model was linearised
 * @param chiSquared weighted squares of the residuals with all effects taken out
 */
public record NonlinearFit(
        double[] coefficients,
        double[][] covariance,
        double[] roomDeviations,
        double[] sessionDeviations,
        List<Room> rooms,
        double criterion,
        int linearisations,
        double chiSquared) {

    public NonlinearFit {
        rooms = List.copyOf(rooms);
    }

    /**
     * One room.
     *
     * @param label its key
     * @param sessions how many
     * @param effects shrunken departures, in the order of the room's columns
     * @param standardErrors their standard deviations, β given
     * @param covariance of the departures, β given
     */
    public record Room(String label, int sessions, double[] effects, double[] standardErrors, double[][] covariance) {}

    /** Standard error of a coefficient. */
    public double standardError(int index) {
        return Math.sqrt(covariance[index][index]);
    }

    /** {@code w'β}. */
    public double value(double[] weights) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * coefficients[i];
        }
        return sum;
    }

    /** Standard error of {@code w'β}. */
    public double standardError(double[] weights) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            for (int j = 0; j < weights.length; j++) {
                sum += weights[i] * covariance[i][j] * weights[j];
            }
        }
        return Math.sqrt(sum);
    }
}
