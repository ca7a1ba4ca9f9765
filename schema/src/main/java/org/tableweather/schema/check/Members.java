package org.tableweather.schema.check;

import java.util.Arrays;

/** Positions of the trials of one shot in a session, rising. */
final class Members {
    private int[] positions = new int[16];
    private int size;

    void add(int position) {
        if (size == positions.length) {
            positions = Arrays.copyOf(positions, size * 2);
        }
        positions[size++] = position;
    }

    int size() {
        return size;
    }

    int get(int index) {
        return positions[index];
    }

    int first() {
        return positions[0];
    }

    int last() {
        return positions[size - 1];
    }
}
