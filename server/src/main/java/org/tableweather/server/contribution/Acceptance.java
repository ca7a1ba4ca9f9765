package org.tableweather.server.contribution;

import java.util.Locale;

/** Whether a curator has the last word. */
enum Acceptance {
    /** What passes the checks is published. */
    AUTOMATIC,
    /** What passes the checks waits for a curator. */
    CURATED;

    static Acceptance of(String setting) {
        for (Acceptance acceptance : values()) {
            if (acceptance.name().toLowerCase(Locale.ROOT).equals(setting)) {
                return acceptance;
            }
        }
        throw new IllegalArgumentException(
                "tableweather.acceptance = " + setting + " is not one of automatic, curated: choose one of them");
    }
}
