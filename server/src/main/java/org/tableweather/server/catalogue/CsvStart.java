package org.tableweather.server.catalogue;

import java.nio.charset.StandardCharsets;

/** The first fields of a row that the database wrote as CSV: the session's number, and the air when it must be looked at. */
final class CsvStart {
    private CsvStart() {}

    /** Where the field after the next comma begins. */
    static int afterComma(byte[] row, int from) {
        int at = from;
        while (row[at] != ',') {
            at++;
        }
        return at + 1;
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
