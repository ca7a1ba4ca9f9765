package org.tableweather.release;

import java.io.IOException;

/** A column of numbers. */
final class NumberCells {
    private final int column;
    private double[] numbers = {};
    private ColumnPages pages;

    NumberCells(int column) {
        this.column = column;
    }

    void enter(RowGroups groups) throws IOException {
        pages = groups.isEmpty(column) ? null : ColumnPages.of(groups, column);
        numbers = new double[pages == null ? 0 : pages.dictionarySize()];
        for (int id = 0; id < numbers.length; id++) {
            numbers[id] = pages.dictionary().decodeToDouble(id);
        }
    }

    /** The numbers of the next rows, to their places; what is empty leaves its place as it is. */
    void take(double[] to, int[] places, int count) throws IOException {
        int done = 0;
        while (pages != null && done < count) {
            int rows = Math.min(count - done, pages.inPage());
            put(to, places, done, pages.read(rows));
            done += rows;
        }
    }

    private void put(double[] to, int[] places, int from, int values) throws IOException {
        int[] filled = pages.filled();
        if (pages.isPacked()) {
            int[] ids = pages.packed(values);
            for (int i = 0; i < values; i++) {
                to[places[from + filled[i]]] = numbers[ids[i]];
            }
        } else {
            for (int i = 0; i < values; i++) {
                to[places[from + filled[i]]] =
                        pages.others() == null ? pages.number() : pages.others().readDouble();
            }
        }
    }
}
