package org.tableweather.schema.geometry;

import org.tableweather.schema.record.Rail;

/**
 * Directions at one rail: along it, and off it into the table.
 *
 * @param rail which
 */
record RailFrame(Rail rail) {

    /** Whether the rail lies across the table, so that its normal runs along x. */
    boolean isShort() {
        return rail == Rail.HEAD || rail == Rail.FOOT;
    }

    /** +1 when the normal that points into the table runs towards larger coordinates, else −1. */
    int inward() {
        return rail == Rail.HEAD || rail == Rail.NEAR ? 1 : -1;
    }

    /** The coordinate along the rail, m. */
    double along(TablePoint point) {
        return isShort() ? point.yM() : point.xM();
    }

    /** The coordinate across the rail, m. */
    double across(TablePoint point) {
        return isShort() ? point.xM() : point.yM();
    }

    /** The point with these coordinates along and across the rail, m. */
    TablePoint point(double along, double across) {
        return isShort() ? new TablePoint(across, along) : new TablePoint(along, across);
    }
}
