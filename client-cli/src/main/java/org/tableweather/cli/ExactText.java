package org.tableweather.cli;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people write them, the same on every machine. */
final class ExactText {
    private ExactText() {}

    /** All its digits, without trailing zeros or exponent. */
    static String plain(double number) {
        String text = BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
        return text.equals("0.0") ? "0" : text;
    }

    /** So many significant digits, without exponent. */
    static String significant(double number, int digits) {
        return BigDecimal.valueOf(number).round(new MathContext(digits)).toPlainString();
    }
}
