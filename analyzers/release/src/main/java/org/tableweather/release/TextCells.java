package org.tableweather.release;

import java.io.IOException;

/** A column of texts; equal texts of a row group are one object where it has a dictionary. */
final class TextCells {
    private final int column;
    private String[] texts = {};
    private ColumnPages pages;

    TextCells(int column) {
        this.column = column;
    }

    void enter(RowGroups groups) throws IOException {
        pages = ColumnPages.of(groups, column);
        texts = new String[pages.dictionarySize()];
    }

    /** The texts of the next rows, to their places; what is empty leaves its place as it is. */
    void take(String[] to, int[] places, int count) throws IOException {
        int done = 0;
        while (done < count) {
            int rows = Math.min(count - done, pages.inPage());
            put(to, places, done, pages.read(rows));
            done += rows;
        }
    }

    private void put(String[] to, int[] places, int from, int values) throws IOException {
        int[] filled = pages.filled();
        if (pages.isPacked()) {
            int[] ids = pages.packed(values);
            for (int i = 0; i < values; i++) {
                to[places[from + filled[i]]] = text(ids[i]);
            }
        } else {
            for (int i = 0; i < values; i++) {
                to[places[from + filled[i]]] = pages.others().readBytes().toStringUsingUTF8();
            }
        }
    }

    private String text(int id) {
        if (texts[id] == null) {
            texts[id] = pages.dictionary().decodeToBinary(id).toStringUsingUTF8();
        }
        return texts[id];
    }
}
