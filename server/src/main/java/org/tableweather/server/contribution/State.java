package org.tableweather.server.contribution;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where a contribution stands. */
public enum State {
    /** The archive is here; nothing is known of its content. */
    RECEIVED,
    /** The checks passed; a curator must accept it. */
    CHECKED,
    /** Published. */
    ACCEPTED,
    /** The checks refuse it; the report says why. */
    REFUSED,
    /** Taken back; what was released before stays released. */
    WITHDRAWN;

    /** The name in JSON. */
    @JsonValue
    public String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }

    static State of(String schemaName) {
        return valueOf(schemaName.toUpperCase(Locale.ROOT));
    }
}
