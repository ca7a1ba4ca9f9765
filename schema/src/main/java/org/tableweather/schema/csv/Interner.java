package org.tableweather.schema.csv;

import java.util.Arrays;

/** Gives equal cells of a column the same string, without making a new one for each row. */
public final class Interner {
    private static final int SLOTS = 1 << 10;
    private final String[] texts = new String[SLOTS];
    /** The characters of each text: comparing arrays is one instruction for many of them. */
    private final char[][] characters = new char[SLOTS][];

    /**
     * The text in part of a buffer.
     *
     * @param buffer characters
     * @param from first character
     * @param to after the last character
     */
    public String text(char[] buffer, int from, int to) {
        if (from == to) {
            return "";
        }
        // a few characters choose the slot: comparing then settles it
        int length = to - from;
        int hash = 31 * (31 * (31 * length + buffer[from]) + buffer[to - 1]) + buffer[from + length / 2];
        hash = 31 * (31 * hash + buffer[from + length * 5 / 8]) + buffer[Math.max(from, to - 2)];
        int slot = (hash ^ hash >>> 15) & SLOTS - 1;
        char[] known = characters[slot];
        if (known != null && Arrays.equals(known, 0, known.length, buffer, from, to)) {
            return texts[slot];
        }
        String text = new String(buffer, from, length);
        characters[slot] = Arrays.copyOfRange(buffer, from, to);
        texts[slot] = text;
        return text;
    }
}
