package org.tableweather.release;

import java.io.IOException;
import java.util.Arrays;

/** A column of counts. */
final class CountCells {
    private final int column;
    private int[] numbers = {};
    private ColumnPages pages;

    CountCells(int column) {
        this.column = column;
    }

    void enter(RowGroups groups) throws IOException {
        pages = ColumnPages.of(groups, column);
        numbers = new int[pages.dictionarySize()];
        for (int id = 0; id < numbers.length; id++) {
            numbers[id] = pages.dictionary().decodeToInt(id);
        }
    }

    /** The counts of the next rows, in order; −1 where there is none. */
    void take(int[] to, int count) throws IOException {
        Arrays.fill(to, 0, count, -1);
        int done = 0;
        while (done < count) {
            int rows = Math.min(count - done, pages.inPage());
            put(to, done, pages.read(rows));
            done += rows;
        }
    }

    private void put(int[] to, int from, int values) throws IOException {
        int[] filled = pages.filled();
        if (pages.isPacked()) {
            int[] ids = pages.packed(values);
            for (int i = 0; i < values; i++) {
                to[from + filled[i]] = numbers[ids[i]];
            }
        } else {
            for (int i = 0; i < values; i++) {
                to[from + filled[i]] = pages.others().readInteger();
            }
        }
    }
}
