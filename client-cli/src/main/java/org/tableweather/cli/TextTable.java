package org.tableweather.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows in aligned columns: numbers to the right, words to the left. */
final class TextTable {
    private final List<List<String>> rows = new ArrayList<>();

    /** A table with these headings. */
    static TextTable of(String... headings) {
        TextTable table = new TextTable();
        table.rows.add(List.of(headings));
        return table;
    }

    /** Adds a row. */
    TextTable row(String... cells) {
        rows.add(List.of(cells));
        return this;
    }

    /** All rows, each line ended. */
    String text() {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        boolean[] numeric = new boolean[columns];
        for (int column = 0; column < columns; column++) {
            int index = column;
            widths[column] =
                    rows.stream().mapToInt(row -> row.get(index).length()).max().orElse(0);
            numeric[column] = rows.size() > 1
                    && rows.stream().skip(1).map(row -> row.get(index)).allMatch(TextTable::isNumber);
        }
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < columns; column++) {
                String cell = row.get(column);
                String gap = " ".repeat(widths[column] - cell.length());
                line.append(column == 0 ? "" : "  ").append(numeric[column] ? gap + cell : cell + gap);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static boolean isNumber(String cell) {
        return cell.isEmpty() || cell.equals("-") || cell.matches("[-+]?[0-9][0-9,]*(\\.[0-9]+)?([eE][-+]?[0-9]+)?");
    }
}
