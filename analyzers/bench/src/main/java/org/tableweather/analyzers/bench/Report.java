package org.tableweather.analyzers.bench;

import java.util.Locale;

/** Prints what was measured. */
final class Report {

    private Report() {}

    static void print(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}
