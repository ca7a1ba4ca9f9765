package org.tableweather.schema.record;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where a trial's climate came from, best first. */
public enum ClimateSource {
    /** The trial's own spot reading. */
    SPOT,
    /** The instrument's log, interpolated at the trial's start. */
    LOG,
    /** One climate stated by hand for the whole session. */
    STATED,
    /** No climate known. */
    NONE;

    private final String schemaName = name().toLowerCase(Locale.ROOT);

    /** The name in JSON and CSV. */
    @JsonValue
    public String schemaName() {
        return schemaName;
    }
}
