package org.tableweather.analyzers.standard.statistics.robust;

import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * Rows that may depend on each other, as one room's trials.
 *
 * @param label the room
 * @param moments of the columns x₁ ... xₖ, y, without a column of ones: merge a room's sessions
 */
public record Cluster(String label, Moments moments) {

    /**
     * Checks that there are rows.
     *
     * @throws IllegalArgumentException for no rows
     */
    public Cluster {
        if (moments.n() < 1 || moments.columns() < 1) {
            throw new IllegalArgumentException("cluster " + label + " has no rows or no column");
        }
    }
}
