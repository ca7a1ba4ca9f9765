package org.tableweather.schema.check;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What a finding means for the contribution. */
public enum Severity {
    /** The contribution is not accepted. */
    REFUSE,
    /** Accepted, but doubtful. */
    WARN,
    /** Accepted; something would make it more useful. */
    NOTE;

    /** The name in JSON. */
    @JsonValue
    public String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
