package org.tableweather.schema.geometry;

/**
 * A place of a ball's centre in the table frame.
 *
 * @param xM along, from the nose of the head rail, m
 * @param yM across, from the nose of the near rail, m
 */
public record TablePoint(double xM, double yM) {

    /**
     * Straight distance.
     *
     * @param other another place
     * @return m
     */
    public double distanceM(TablePoint other) {
        return Math.hypot(other.xM - xM, other.yM - yM);
    }
}
