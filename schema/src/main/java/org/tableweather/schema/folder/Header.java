package org.tableweather.schema.folder;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.check.UnitChecks;
import org.tableweather.schema.table.Column;

/** Finds the known columns among the names of a header, and reports the rest. */
final class Header<C extends Column> {
    private final String file;
    private final Findings findings;
    private final List<C> known;
    private final List<C> matched = new ArrayList<>();
    private final Set<C> meant = new HashSet<>();

    Header(String file, List<C> known, Findings findings) {
        this.file = file;
        this.known = known;
        this.findings = findings;
    }

    /**
     * Matches.
     *
     * @param names of the header, trimmed
     * @param row where the header is
     * @return a column or null for each name
     */
    List<C> match(List<String> names, long row) {
        for (String name : names) {
            matched.add(column(name, row));
        }
        for (C column : known) {
            if (column.required() && !has(column) && !meant.contains(column)) {
                missing(column.header(), row);
            }
        }
        return matched;
    }

    /** Whether a required column is wanting. */
    boolean isWanting() {
        return known.stream().anyMatch(column -> column.required() && !has(column));
    }

    /** Whether a column is there. */
    boolean has(C column) {
        return matched.contains(column);
    }

    /**
     * Reports that none of several columns is there, unless one was meant by a name with another unit.
     *
     * @param columns of which one is needed
     * @param row where the header is
     */
    void needOneOf(List<C> columns, long row) {
        if (columns.stream().noneMatch(column -> has(column) || meant.contains(column))) {
            missing(String.join(" or ", columns.stream().map(Column::header).toList()), row);
        }
    }

    private void missing(String name, long row) {
        findings.add(
                StructureChecks.MISSING_COLUMN,
                Place.cell(file, row, name),
                null,
                "the column " + name,
                () -> "the column " + name + " is missing");
    }

    private C column(String name, long row) {
        Optional<C> found = Column.of(known, name);
        if (found.isPresent()) {
            if (has(found.get())) {
                findings.add(
                        StructureChecks.DUPLICATE_COLUMN,
                        Place.cell(file, row, name),
                        name,
                        () -> "the column " + name + " occurs more than once");
                return null;
            }
            return found.get();
        }
        Optional<C> intended = Column.meant(known, name);
        if (intended.isPresent()) {
            meant.add(intended.get());
            unknownUnit(name, row, intended.get());
        } else if (!name.isEmpty()) {
            findings.add(
                    StructureChecks.UNKNOWN_COLUMN,
                    Place.cell(file, row, name),
                    name,
                    () -> "the column " + name + " is not part of the format and is not read");
        }
        return null;
    }

    private void unknownUnit(String name, long row, C intended) {
        List<String> readable = known.stream()
                .filter(column -> Column.meant(List.of(column), name).isPresent())
                .map(Column::header)
                .toList();
        String names = String.join(" or ", readable);
        findings.add(
                UnitChecks.UNKNOWN_UNIT,
                Place.cell(file, row, name),
                name,
                "the column name " + names,
                () -> "the column " + name + " has no unit that is read: convert to " + intended.unit()
                        + " and name it " + intended.header());
    }
}
