package org.tableweather.analyzers.standard.catalogue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;

/** Figures in words, the same on every machine. */
public final class Figures {

    private static final int MOST_LISTED = 8;

    private Figures() {}

    /** All its digits, without trailing zeros or exponent. */
    public static String plain(double number) {
        String text = BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
        return text.equals("0.0") ? "0" : text;
    }

    /** So many significant digits, without exponent. */
    public static String significant(double number, int digits) {
        return BigDecimal.valueOf(number).round(new MathContext(digits)).toPlainString();
    }

    /** With a fixed number of decimals; a zero has no sign. */
    public static String fixed(double number, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", number);
        return text.matches("-0\\.?0*") ? text.substring(1) : text;
    }

    /** The count with its noun, plural by an s. */
    public static String counted(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    /** The first few of a list, and how many more. */
    public static String listed(List<String> names) {
        if (names.size() <= MOST_LISTED) {
            return String.join(", ", names);
        }
        return String.join(", ", names.subList(0, MOST_LISTED)) + " and " + (names.size() - MOST_LISTED) + " more";
    }
}
