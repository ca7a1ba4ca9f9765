package org.tableweather.schema.table;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** A column of a CSV file. */
public interface Column {

    /** The name in the file: snake_case with the unit at the end. */
    String header();

    /** UCUM code of the unit; {@code 1} for counts and ratios, empty for texts and times. */
    String unit();

    /** Whether every file must have it. */
    boolean required();

    /** Smallest value that is accepted, in this column's unit; −∞ without. */
    double min();

    /** Largest value that is accepted, in this column's unit; ∞ without. */
    double max();

    /**
     * The column of this name, letter case aside.
     *
     * @param columns of one file
     * @param name as written
     */
    static <C extends Column> Optional<C> of(Collection<C> columns, String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return columns.stream().filter(column -> column.header().equals(lower)).findFirst();
    }

    /**
     * The column that a name with no unit, or a unit that is not read, must have meant: {@code temp_k} means
     * {@code temp_c}.
     *
     * @param columns of one file
     * @param name as written
     */
    static <C extends Column> Optional<C> meant(Collection<C> columns, String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        String bare = withoutUnit(lower);
        return columns.stream()
                .filter(column -> !column.unit().isEmpty() && !column.unit().equals("1"))
                .filter(column -> {
                    String quantity = withoutUnit(column.header());
                    return quantity.equals(lower) || quantity.equals(bare);
                })
                .findFirst();
    }

    private static String withoutUnit(String header) {
        int end = header.lastIndexOf('_');
        return end < 0 ? header : header.substring(0, end);
    }
}
