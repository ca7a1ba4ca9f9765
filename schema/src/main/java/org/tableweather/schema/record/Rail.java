package org.tableweather.schema.record;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** The four rails in the table frame: x runs 0..8 diamonds along the long rails, y 0..4 across. */
public enum Rail {
    /** The short rail at x = 0. */
    HEAD,
    /** The short rail at x = 8. */
    FOOT,
    /** The long rail at y = 0. */
    NEAR,
    /** The long rail at y = 4. */
    FAR;

    private final String schemaName = name().toLowerCase(Locale.ROOT);

    /** The name in JSON and CSV. */
    @JsonValue
    public String schemaName() {
        return schemaName;
    }
}
