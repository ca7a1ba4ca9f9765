package org.tableweather.schema.record;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import java.util.Optional;

/** What a trial tests; each kind has its own required and optional outcomes. */
public enum Kind {
    /** One rail, known approach. */
    REBOUND,
    /** An object ball off one or more rails. */
    BANK,
    /** The cue ball off one or more rails. */
    KICK,
    /** Roll-out: how far a ball of known speed rolls. */
    SPEED,
    /** Spread of the rack. */
    BREAK,
    /** Object ball off the line of centres. */
    THROW,
    /** Cue ball off the line of the cue. */
    DEFLECTION,
    /** Height of a ball leaving the cloth. */
    HOP;

    private final String schemaName = name().toLowerCase(Locale.ROOT);

    /** The name in JSON and CSV: {@code rebound}, {@code bank} ... */
    @JsonValue
    public String schemaName() {
        return schemaName;
    }

    /**
     * The kind of this schema name.
     *
     * @param schemaName lower case, as in the files
     * @return empty when there is no such kind
     */
    public static Optional<Kind> of(String schemaName) {
        for (Kind kind : values()) {
            if (kind.schemaName.equals(schemaName)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
