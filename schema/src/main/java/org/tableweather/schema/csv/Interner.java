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
        int hash = 0;
        for (int i = from; i < to; i++) {
            hash = 31 * hash + buffer[i];
        }
        int slot = (hash ^ hash >>> 15) & SLOTS - 1;
        String known = slots[slot];
        if (known != null && known.hashCode() == hash && matches(known, buffer, from, to)) {
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
