package org.tableweather.schema.csv;

/**
 * Reads decimal numbers out of a character buffer, with a point or a comma as decimal mark, and keeps count of which.
 *
 * <p>Short numbers are exact by one division or multiplication: a decimal significand below 2⁵³ and a power of ten up
 * to 10²² are both doubles without error, so that the quotient or product is rounded once. The rest goes to
 * {@link Double#parseDouble}.
 *
 * @source Clinger1990
 */
public final class Decimals {
    private static final double[] POWERS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };
    private static final long EXACT = 1L << 53;
    private static final int SAFE_DIGITS = 18;
    /** Longest text whose digits fit an int. */
    private static final int SHORT = 9;

    private long points;
    private long commas;

    /** Numbers read so far that had a decimal point. */
    public long points() {
        return points;
    }

    /** Numbers read so far that had a decimal comma. */
    public long commas() {
        return commas;
    }

    /**
     * The number in part of a buffer: {@code [+-] digits [mark digits] [e [+-] digits]}, nothing else.
     *
     * @param buffer characters
     * @param from first character
     * @param to after the last character
     * @return the nearest double; NaN when it is not a finite number
     */
    public double parse(char[] buffer, int from, int to) {
        if (to - from <= SHORT && from < to) {
            return parseShort(buffer, from, to);
        }
        return parseLong(buffer, from, to);
    }

    /** One loop for the numbers that tables are full of; anything but digits and one mark goes the long way. */
    private double parseShort(char[] buffer, int from, int to) {
        boolean negative = buffer[from] == '-';
        int first = negative ? from + 1 : from;
        int significand = 0;
        int mark = to - 1;
        int others = 0;
        for (int i = first; i < to; i++) {
            int digit = buffer[i] - '0';
            if ((digit & 0xFFFF) <= 9) {
                significand = significand * 10 + digit;
            } else {
                others++;
                mark = i;
            }
        }
        char sign = buffer[mark];
        if (others > 1 || others == 1 && sign != '.' && sign != ',' || to - first - others == 0) {
            return parseLong(buffer, from, to);
        }
        double value = significand;
        if (others == 1) {
            count(sign);
            value /= POWERS[to - 1 - mark];
        }
        return negative ? -value : value;
    }

    private double parseLong(char[] buffer, int from, int to) {
        int i = from;
        boolean negative = i < to && buffer[i] == '-';
        if (negative || i < to && buffer[i] == '+') {
            i++;
        }
        int first = i;
        long significand = 0;
        int digit = 0;
        while (i < to && (digit = buffer[i] - '0') >= 0 && digit <= 9) {
            significand = significand * 10 + digit;
            i++;
        }
        int digits = i - first;
        int places = 0;
        if (i < to && (digit == '.' - '0' || digit == ',' - '0')) {
            int mark = i++;
            while (i < to && (digit = buffer[i] - '0') >= 0 && digit <= 9) {
                significand = significand * 10 + digit;
                i++;
            }
            places = i - mark - 1;
            digits += places;
            if (i == to && digits > 0 && digits <= SAFE_DIGITS && significand <= EXACT) {
                count(buffer[mark]);
            }
        }
        if (i < to || digits == 0 || digits > SAFE_DIGITS || significand > EXACT) {
            return slow(buffer, from, to);
        }
        double value = places == 0 ? significand : significand / POWERS[places];
        return negative ? -value : value;
    }

    /**
     * The number in a text.
     *
     * @return NaN when it is not a finite number
     */
    public double parse(String text) {
        return parse(text.toCharArray(), 0, text.length());
    }

    private void count(char mark) {
        if (mark == ',') {
            commas++;
        } else {
            points++;
        }
    }

    private double slow(char[] buffer, int from, int to) {
        int mark = wellFormed(buffer, from, to);
        if (mark == MALFORMED) {
            return Double.NaN;
        }
        double value = Double.parseDouble(new String(buffer, from, to - from).replace(',', '.'));
        if (Double.isInfinite(value)) {
            return Double.NaN;
        }
        if (mark >= 0) {
            count(buffer[mark]);
        }
        return value;
    }

    private static final int MALFORMED = -2;

    /** Position of the decimal mark, −1 without one, {@link #MALFORMED} when it is no number. */
    private static int wellFormed(char[] buffer, int from, int to) {
        int i = afterSign(buffer, from, to);
        int start = i;
        int mark = -1;
        while (i < to && (isDigit(buffer[i]) || mark < 0 && (buffer[i] == '.' || buffer[i] == ','))) {
            if (!isDigit(buffer[i])) {
                mark = i;
            }
            i++;
        }
        if (i - start - (mark < 0 ? 0 : 1) == 0) {
            return MALFORMED;
        }
        if (i == to) {
            return mark;
        }
        if (buffer[i] != 'e' && buffer[i] != 'E') {
            return MALFORMED;
        }
        int exponent = afterSign(buffer, i + 1, to);
        int end = exponent;
        while (end < to && isDigit(buffer[end])) {
            end++;
        }
        return end == to && end > exponent ? mark : MALFORMED;
    }

    private static int afterSign(char[] buffer, int from, int to) {
        return from < to && (buffer[from] == '-' || buffer[from] == '+') ? from + 1 : from;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
