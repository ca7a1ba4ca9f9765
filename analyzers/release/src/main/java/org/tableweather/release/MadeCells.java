package org.tableweather.release;

import java.io.IOException;
import org.tableweather.schema.record.Made;

/** The column that says whether it went in. */
final class MadeCells {
    private final int column;
    private ColumnPages pages;

    MadeCells(int column) {
        this.column = column;
    }

    void enter(RowGroups groups) throws IOException {
        pages = groups.isEmpty(column) ? null : ColumnPages.of(groups, column);
    }

    /** What the next rows say, to their places; what is empty leaves its place as it is. */
    void take(Made[] to, int[] places, int count) throws IOException {
        int done = 0;
        while (pages != null && done < count) {
            int rows = Math.min(count - done, pages.inPage());
            put(to, places, done, pages.read(rows));
            done += rows;
        }
    }

    private void put(Made[] to, int[] places, int from, int values) throws IOException {
        int[] filled = pages.filled();
        int[] truths = pages.isPacked() ? pages.packed(values) : new int[0];
        for (int i = 0; i < values; i++) {
            boolean made = pages.isPacked() ? truths[i] == 1 : pages.others().readBoolean();
            to[places[from + filled[i]]] = made ? Made.YES : Made.NO;
        }
    }
}
