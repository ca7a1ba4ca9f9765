package org.tableweather.server.catalogue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The first fields of a row that the database wrote as CSV: the session's number, the air when it must be looked at, and the time
 * behind the position and the name of the trial.
 *
 * @source RFC4180
 */
final class CsvStart {
    private static final String UTC = "+00";
    private static final String UTC_BEFORE_YEAR_1 = "+00 BC";
    private static final int YEAR_DIGITS = 4;

    private CsvStart() {}

    /** Where the field after the next comma begins. */
    static int afterComma(byte[] row, int from) {
        int at = from;
        while (row[at] != ',') {
            at++;
        }
        return at + 1;
    }

    /** Where the field after the next one begins, which may stand in quotation marks. */
    static int afterField(byte[] row, int from) {
        int at = from;
        if (row[at] == '"') {
            // a mark within the field is doubled, so it ends the field and begins another one that is skipped the same
            // way
            while (row[at] == '"') {
                at = afterMark(row, at + 1);
            }
        }
        return afterComma(row, at);
    }

    private static int afterMark(byte[] row, int from) {
        int at = from;
        while (row[at] != '"') {
            at++;
        }
        return at + 1;
    }

    /**
     * Makes a time of the database one of RFC 3339, but for the Z, which belongs in place of its zone +00.
     *
     * @param end behind it
     * @return where its zone begins
     * @source RFC3339
     */
    static int utc(byte[] row, int from, int end) {
        int at = from;
        while (row[at] != ' ') {
            at++;
        }
        row[at] = 'T';
        if (row[end - 1] != 'C') {
            return end - UTC.length();
        }
        // RFC 3339 has a year 0, which the database calls the first before Christ; it has none before
        Arrays.fill(row, from, from + YEAR_DIGITS, (byte) '0');
        return end - UTC_BEFORE_YEAR_1.length();
    }

    /** The whole number at the beginning. */
    static int number(byte[] row) {
        int number = 0;
        for (int at = 0; row[at] != ','; at++) {
            number = 10 * number + row[at] - '0';
        }
        return number;
    }

    /** Where the fields behind session, temperature and humidity begin; 0 when the trial does not pass. */
    static int passing(byte[] row, TrialBatch batch) {
        int tempC = afterComma(row, 0);
        int rhPct = afterComma(row, tempC);
        int rest = afterComma(row, rhPct);
        return batch.passes(number(row), real(row, tempC, rhPct), real(row, rhPct, rest)) ? rest : 0;
    }

    /** A field; NaN when it is empty. */
    private static double real(byte[] row, int from, int next) {
        int length = next - 1 - from;
        return length == 0 ? Double.NaN : Double.parseDouble(new String(row, from, length, StandardCharsets.US_ASCII));
    }
}
