package org.tableweather.server.analysis;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where one attempt to make an analysis stands. */
public enum AttemptState {
    /** It waits for its turn. */
    QUEUED,
    /** It is being made. */
    RUNNING,
    /** It was made. */
    DONE,
    /** It could not be made; the failure says why. */
    FAILED,
    /** Somebody did not want it any more. */
    CANCELLED,
    /** The server was ended before it was made. */
    INTERRUPTED;

    /** The name in JSON and in the database. */
    @JsonValue
    public String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }

    static AttemptState of(String schemaName) {
        return valueOf(schemaName.toUpperCase(Locale.ROOT));
    }

    /** Whether it waits or is being made. */
    boolean isActive() {
        return this == QUEUED || this == RUNNING;
    }
}
