package org.tableweather.server.release;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where a release stands. */
enum ReleaseState {
    /** Its contributions are fixed, its files are being written. */
    BUILDING,
    /** Complete; never changes. */
    FROZEN,
    /** Its files could not be written; the number is free again. */
    FAILED;

    /** The name in JSON and in the database. */
    @JsonValue
    String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }

    static ReleaseState of(String name) {
        return valueOf(name.toUpperCase(Locale.ROOT));
    }
}
