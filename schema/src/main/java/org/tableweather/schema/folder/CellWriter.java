package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.BitSet;

/** Writes the cells of rows, comma-separated with decimal points, and remembers which columns were ever filled. */
final class CellWriter {
    private final Writer out;
    private final BitSet filled = new BitSet();
    private final StringBuilder line = new StringBuilder();
    private char[] chars = new char[512];
    private int column;

    CellWriter(Writer out) {
        this.out = out;
    }

    BitSet filled() {
        return filled;
    }

    /** An empty cell. */
    void skip() {
        if (column++ > 0) {
            line.append(',');
        }
    }

    /** A text, quoted where RFC 4180 wants it. */
    void text(String text) {
        skip();
        if (text.isEmpty()) {
            return;
        }
        filled.set(column - 1);
        if (needsQuotes(text)) {
            line.append('"').append(text.replace("\"", "\"\"")).append('"');
        } else {
            line.append(text);
        }
    }

    /**
     * A cell as it was read.
     *
     * @param quoted whether it was quoted, and so must be again
     */
    void copy(char[] buffer, int offset, int length, boolean quoted) {
        if (quoted) {
            text(new String(buffer, offset, length));
        } else {
            skip();
            line.append(buffer, offset, length);
        }
    }

    private static boolean needsQuotes(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == ',' || c == '"' || c == '\n' || c == '\r' || c == ';' || c == '\t') {
                return true;
            }
        }
        return text.charAt(0) <= ' ' || text.charAt(text.length() - 1) <= ' ';
    }

    /** A number that reads back as the same double; an empty cell for NaN. */
    void number(double value) {
        skip();
        if (Double.isNaN(value)) {
            return;
        }
        filled.set(column - 1);
        long whole = (long) value;
        if (whole == value && Math.abs(whole) < 1_000_000_000_000_000L) {
            line.append(whole);
            return;
        }
        int start = line.length();
        line.append(value);
        for (int i = start; i < line.length(); i++) {
            if (line.charAt(i) == 'E') {
                line.setLength(start);
                line.append(new BigDecimal(Double.toString(value))
                        .stripTrailingZeros()
                        .toPlainString());
                return;
            }
        }
    }

    /** A count; an empty cell for −1. */
    void count(int value) {
        skip();
        if (value >= 0) {
            filled.set(column - 1);
            line.append(value);
        }
    }

    /** Ends the row. */
    void end() throws IOException {
        line.append('\n');
        int length = line.length();
        if (length > chars.length) {
            chars = new char[length * 2];
        }
        line.getChars(0, length, chars, 0);
        out.write(chars, 0, length);
        line.setLength(0);
        column = 0;
    }
}
