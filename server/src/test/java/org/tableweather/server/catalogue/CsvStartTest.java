package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class CsvStartTest {

    @Test
    void skipsAFieldInQuotationMarks() {
        // the example of RFC 4180, section 2, rule 7: a mark within a field is doubled
        byte[] row = bytes("\"aaa\",\"b\"\"bb\",\"ccc\"\n");
        int second = CsvStart.afterField(row, 0);
        int third = CsvStart.afterField(row, second);
        assertThat(rest(row, second)).isEqualTo("\"b\"\"bb\",\"ccc\"\n");
        assertThat(rest(row, third)).isEqualTo("\"ccc\"\n");
    }

    @Test
    void skipsCommasWithinMarksAndEmptyFields() {
        byte[] row = bytes("\",\",\"\"\"\",,plain,\n");
        int second = CsvStart.afterField(row, 0);
        int third = CsvStart.afterField(row, second);
        int fourth = CsvStart.afterField(row, third);
        assertThat(rest(row, second)).isEqualTo("\"\"\"\",,plain,\n");
        assertThat(rest(row, third)).isEqualTo(",plain,\n");
        assertThat(rest(row, fourth)).isEqualTo("plain,\n");
        assertThat(rest(row, CsvStart.afterField(row, fourth))).isEqualTo("\n");
    }

    @Test
    void findsTheZoneOfATime() {
        // the first example of RFC 3339, section 5.8, as the database writes it
        byte[] row = bytes("1985-04-12 23:20:50.52+00,kick\n");
        int zone = CsvStart.utc(row, 0, row.length - ",kick\n".length());
        assertThat(new String(row, 0, zone, StandardCharsets.US_ASCII) + "Z").isEqualTo("1985-04-12T23:20:50.52Z");
    }

    @Test
    void theYear0IsTheFirstBeforeChristInTheDatabase() {
        // from memory: ISO 8601-1 has a year 0000 before 0001, PostgreSQL calls it 1 BC
        byte[] row = bytes("0001-02-29 23:20:50+00 BC,kick\n");
        int zone = CsvStart.utc(row, 0, row.length - ",kick\n".length());
        assertThat(new String(row, 0, zone, StandardCharsets.US_ASCII) + "Z").isEqualTo("0000-02-29T23:20:50Z");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static String rest(byte[] row, int from) {
        return new String(row, from, row.length - from, StandardCharsets.US_ASCII);
    }
}
