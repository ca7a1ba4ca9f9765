package org.tableweather.schema.csv;

/** Gives equal cells of a column the same string, without making a new one for each row. */
public final class Interner {
    private static final int SLOTS = 1 << 10;
    private final String[] slots = new String[SLOTS];

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
        String known = slots[slot];
        if (known != null && matches(known, buffer, from, to)) {
            return known;
        }
        String text = new String(buffer, from, to - from);
        slots[slot] = text;
        return text;
    }

    private static boolean matches(String known, char[] buffer, int from, int to) {
        if (known.length() != to - from) {
            return false;
        }
        for (int i = from; i < to; i++) {
            if (known.charAt(i - from) != buffer[i]) {
                return false;
            }
        }
        return true;
    }
}
