package org.tableweather.schema.csv;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Takes a separated text cell by cell, without a string per cell. Rows are counted as a spreadsheet counts them: the
 * first line of the file is row 1, empty lines count.
 */
public abstract class RowHandler extends AbstractBaseCsvCallbackHandler<RowHandler> {
    private static final int FIRST_CELL = 64;

    private final char[] first = new char[FIRST_CELL];
    private int firstLength;
    private List<String> names = new ArrayList<>();
    private boolean inHeader = true;
    private int width;
    private int cells;
    private int extra;
    private boolean blank;
    private long row;

    /**
     * Takes the header.
     *
     * @param names as written, trimmed
     * @param row its row
     */
    protected abstract void header(List<String> names, long row);

    /** Begins a row. */
    protected abstract void begin();

    /**
     * Takes a cell that is not empty.
     *
     * @param column position, 0 the first
     * @param buffer characters, to be read now
     * @param from first character, blanks left out
     * @param to after the last
     */
    protected abstract void cell(int column, char[] buffer, int from, int to);

    /**
     * Takes a filled cell beyond the header's last column; nothing unless overridden.
     *
     * @param column position, 0 the first
     * @param buffer characters, to be read now
     * @param from first character, blanks left out
     * @param to after the last
     */
    protected void extraCell(int column, char[] buffer, int from, int to) {}

    /**
     * Whether a row above the data is the header; yes unless overridden. Rows before it are left out.
     *
     * @param names its cells, trimmed
     */
    protected boolean isHeader(List<String> names) {
        return true;
    }

    /**
     * Ends a row that is not blank.
     *
     * @param cells how many it has
     * @param extra how many cells beyond the header's are filled
     * @throws IOException when it cannot be passed on
     */
    protected abstract void end(int cells, int extra) throws IOException;

    /** The current row; the first line of the file is row 1. */
    public final long row() {
        return row;
    }

    /** How many columns the header has. */
    protected final int width() {
        return width;
    }

    /** The beginning of the row's first cell, as written. */
    protected final String firstCell() {
        return new String(first, 0, firstLength);
    }

    /** Counts a line that was skipped before. */
    final void skipRow() {
        row++;
    }

    /** Whether a header was seen. */
    final boolean hasHeader() {
        return !inHeader;
    }

    /** Passes the record just built on. */
    final void finish() throws IOException {
        if (blank) {
            return;
        }
        if (inHeader && !isHeader(names)) {
            return;
        }
        if (inHeader) {
            inHeader = false;
            width = names.size();
            header(List.copyOf(names), row);
            names = List.of();
        } else {
            end(cells, extra);
        }
    }

    @Override
    protected final void handleBegin(long startingLineNumber) {
        row++;
        cells = 0;
        extra = 0;
        blank = true;
        firstLength = 0;
        if (inHeader) {
            names.clear();
        } else {
            begin();
        }
    }

    @Override
    protected final void handleField(int column, char[] buffer, int offset, int length, boolean quoted) {
        cells++;
        int from = offset;
        int to = offset + length;
        if (length > 0 && (isBlank(buffer[from]) || isBlank(buffer[to - 1]))) {
            while (from < to && isBlank(buffer[from])) {
                from++;
            }
            while (to > from && isBlank(buffer[to - 1])) {
                to--;
            }
        }
        if (inHeader) {
            names.add(new String(buffer, from, to - from));
            blank &= from == to;
        } else if (from < to) {
            filled(column, buffer, from, to);
        }
    }

    private void filled(int column, char[] buffer, int from, int to) {
        blank = false;
        if (column == 0) {
            firstLength = Math.min(FIRST_CELL, to - from);
            System.arraycopy(buffer, from, first, 0, firstLength);
        }
        if (column < width) {
            cell(column, buffer, from, to);
        } else {
            extra++;
            extraCell(column, buffer, from, to);
        }
    }

    private static boolean isBlank(char c) {
        return c <= ' ' || c == '\u00A0';
    }

    @Override
    protected final RowHandler buildRecord() {
        return this;
    }

    @Override
    protected final RecordType getRecordType() {
        return RecordType.DATA;
    }
}
