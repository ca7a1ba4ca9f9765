package org.tableweather.server.web;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Figures as pages print them: thousands apart, a true minus sign, a dash for what is not known. */
public final class Words {
    /** What stands where nothing is known. */
    public static final String NOTHING = "–";

    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final long KILO = 1000;
    private static final List<String> LARGER = List.of("kB", "MB", "GB");

    private Words() {}

    /** A count: {@code 1,200}. */
    public static String count(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }

    /** A count and what: {@code 1 room}, {@code 12 rooms}. */
    public static String counted(long count, String what) {
        return count(count) + " " + what + (count == 1 ? "" : "s");
    }

    /**
     * A number.
     *
     * @param value NaN or null for not known
     * @param decimals digits after the point
     */
    public static String number(Double value, int decimals) {
        return value == null || !Double.isFinite(value)
                ? NOTHING
                : String.format(Locale.ROOT, "%." + decimals + "f", value).replace('-', '−');
    }

    /** From lowest to highest: {@code 32 to 58}; one figure when they are the same. */
    public static String range(Optional<Double> lowest, Optional<Double> highest, int decimals) {
        String from = number(lowest.orElse(null), decimals);
        String to = number(highest.orElse(null), decimals);
        return from.equals(to) ? from : from + " to " + to;
    }

    /** A length of a file: {@code 950 B}, {@code 1.2 kB}, {@code 34.5 MB}. */
    public static String bytes(long bytes) {
        if (bytes < KILO) {
            return bytes + " B";
        }
        int step = bytes < KILO * KILO ? 0 : bytes < KILO * KILO * KILO ? 1 : 2;
        return String.format(Locale.ROOT, "%.1f %s", bytes / Math.pow(KILO, step + 1), LARGER.get(step));
    }

    /** A time to the minute, in universal time. */
    public static String minute(Optional<Instant> time) {
        return time.map(MINUTE::format).orElse(NOTHING);
    }
}
