package org.tableweather.schema.csv;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;

/**
 * Reads RFC 3339 times, zone mandatory: {@code 2026-01-12T18:05:00+01:00}. A space may stand for the T, and seconds may
 * be left out.
 *
 * @source RFC3339
 */
public final class Timestamps {

    /** What a text turned out to be. */
    public enum Outcome {
        /** A time; {@link Timestamps#instant()} has it. */
        READ,
        /** A date and time, but nothing says in which zone. */
        NO_ZONE,
        /** No time. */
        MALFORMED
    }

    private static final int SECONDS_PER_DAY = 86_400;

    private long epochSecond;
    private int nano;

    /** Seconds since 1970-01-01T00:00:00Z of the last time read. */
    public long epochSecond() {
        return epochSecond;
    }

    /** What the last time read has beyond {@link #epochSecond()}, ns. */
    public int nano() {
        return nano;
    }

    /** The last time read. */
    public Instant instant() {
        return Instant.ofEpochSecond(epochSecond, nano);
    }

    /**
     * Reads the time in part of a buffer.
     *
     * @param buffer characters
     * @param from first character
     * @param to after the last character
     */
    public Outcome parse(char[] buffer, int from, int to) {
        return isPlain(buffer, from, to) && readPlain(buffer, from, to)
                ? Outcome.READ
                : slow(new String(buffer, from, to - from));
    }

    /** Reads the time in a text. */
    public Outcome parse(String text) {
        return parse(text.toCharArray(), 0, text.length());
    }

    /** Whether it has the shape {@code dddd-dd-ddTdd:dd:dd} with Z or ±dd:dd behind it. */
    private static boolean isPlain(char[] b, int from, int to) {
        int length = to - from;
        if (length != 20 && length != 25 || b[from + 4] != '-' || b[from + 7] != '-' || b[from + 10] != 'T') {
            return false;
        }
        if (b[from + 13] != ':' || b[from + 16] != ':') {
            return false;
        }
        char zone = b[from + 19];
        return length == 20 ? zone == 'Z' : (zone == '+' || zone == '-') && b[from + 22] == ':';
    }

    private boolean readPlain(char[] b, int from, int to) {
        int year = two(b, from) * 100 + two(b, from + 2);
        int month = two(b, from + 5);
        int day = two(b, from + 8);
        int hour = two(b, from + 11);
        int minute = two(b, from + 14);
        int second = two(b, from + 17);
        int offset = to - from == 20 ? 0 : two(b, from + 20) * 60 + two(b, from + 23);
        // any non-digit makes its pair at least 1000, which no bound below lets pass
        if (year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 || day > lengthOfMonth(year, month)) {
            return false;
        }
        if (hour > 23 || minute > 59 || second > 59 || offset > 18 * 60) {
            return false;
        }
        long east = b[from + 19] == '-' ? -offset : offset;
        epochSecond = epochDay(year, month, day) * SECONDS_PER_DAY + hour * 3600L + minute * 60L + second - east * 60;
        nano = 0;
        return true;
    }

    private static int two(char[] b, int at) {
        int tens = b[at] - '0';
        int ones = b[at + 1] - '0';
        return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? 1_000_000 : tens * 10 + ones;
    }

    private static int lengthOfMonth(int year, int month) {
        if (month == 2) {
            return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
        }
        return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
    }

    /** Days since 1970-01-01: the year is taken to begin in March, so that the leap day comes last. */
    private static long epochDay(int year, int month, int day) {
        int y = month <= 2 ? year - 1 : year;
        int m = month <= 2 ? month + 9 : month - 3;
        return 365L * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + day - 1 - 719_468;
    }

    private Outcome slow(String text) {
        if (text.length() > 19 && text.startsWith(":60", 16)) {
            return leapSecond(text);
        }
        String iso =
                text.length() > 10 && text.charAt(10) == ' ' ? text.substring(0, 10) + 'T' + text.substring(11) : text;
        try {
            Instant instant = OffsetDateTime.parse(iso).toInstant();
            epochSecond = instant.getEpochSecond();
            nano = instant.getNano();
            return Outcome.READ;
        } catch (DateTimeException e) {
            return isLocal(iso) ? Outcome.NO_ZONE : Outcome.MALFORMED;
        }
    }

    /** Second 60 is taken for the first of the next minute. */
    private Outcome leapSecond(String text) {
        Outcome outcome = slow(text.substring(0, 17) + "59" + text.substring(19));
        if (outcome == Outcome.READ) {
            epochSecond++;
        }
        return outcome;
    }

    private static boolean isLocal(String iso) {
        try {
            LocalDateTime.parse(iso);
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
