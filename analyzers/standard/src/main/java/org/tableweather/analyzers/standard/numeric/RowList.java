package org.tableweather.analyzers.standard.numeric;

import java.util.Arrays;

/** Numbers of rows, from 0, in the order in which they were added. */
public final class RowList {
    private int[] rows = new int[64];
    private int size;

    /** Adds one at the end. */
    public void add(int row) {
        if (size == rows.length) {
            rows = Arrays.copyOf(rows, 2 * size);
        }
        rows[size++] = row;
    }

    /** All that were added. */
    public int[] all() {
        return Arrays.copyOf(rows, size);
    }
}
