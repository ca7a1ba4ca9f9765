package org.tableweather.schema.check;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * Where something was found.
 *
 * @param file {@code trials.csv} ...
 * @param row as a spreadsheet counts, the header being row 1; empty for JSON and for the file as a whole
 * @param column CSV column or JSON pointer; empty for the row or file as a whole
 */
public record Place(String file, OptionalLong row, Optional<String> column) {

    /** A file as a whole. */
    public static Place file(String file) {
        return new Place(file, OptionalLong.empty(), Optional.empty());
    }

    /** A row. */
    public static Place row(String file, long row) {
        return new Place(file, OptionalLong.of(row), Optional.empty());
    }

    /** A cell. */
    public static Place cell(String file, long row, String column) {
        return new Place(file, OptionalLong.of(row), Optional.of(column));
    }

    /**
     * A place in {@code contribution.json}.
     *
     * @param pointer JSON pointer, RFC 6901
     */
    public static Place json(String pointer) {
        return new Place("contribution.json", OptionalLong.empty(), Optional.of(pointer));
    }
}
