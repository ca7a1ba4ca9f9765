package org.tableweather.cli;

import java.util.Arrays;
import org.tableweather.analyzers.spi.Plot;

/** A table with ways on it in letters: a diamond is eight columns wide and four lines high, about square in a terminal. */
final class TableSketch {
    private static final int ALONG = 8;
    private static final int ACROSS = 4;
    private static final int WIDEST = 8;
    private static final int STEPS = 200;

    private final int perDiamond;
    private final char[][] cells;

    /**
     * An empty table.
     *
     * @param columns of the terminal; a narrow one gets a small table
     */
    TableSketch(int columns) {
        perDiamond = Math.max(2, Math.min(WIDEST, (columns - 4) / ALONG / 2 * 2));
        cells = new char[ACROSS * perDiamond / 2 + 1][ALONG * perDiamond + 1];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
    }

    /** Draws a series of points in diamonds; what lies outside the table is left out. */
    TableSketch line(Plot.Series series, char ink) {
        for (int i = 1; i < series.x().size(); i++) {
            for (int step = 0; step <= STEPS; step++) {
                double share = step / (double) STEPS;
                double x = series.x().get(i - 1)
                        + share * (series.x().get(i) - series.x().get(i - 1));
                double y = series.y().get(i - 1)
                        + share * (series.y().get(i) - series.y().get(i - 1));
                mark(x, y, ink);
            }
        }
        return this;
    }

    private void mark(double x, double y, char ink) {
        int column = (int) Math.round(x * perDiamond);
        int row = cells.length - 1 - (int) Math.round(y * perDiamond / 2);
        if (row >= 0 && row < cells.length && column >= 0 && column < cells[0].length) {
            cells[row][column] = ink;
        }
    }

    /** The drawing with a line of words below it. */
    String text(String legend) {
        String edge = "+" + "-".repeat(cells[0].length) + "+\n";
        StringBuilder text = new StringBuilder(edge);
        for (char[] row : cells) {
            text.append('|').append(row).append("|\n");
        }
        return text.append(edge).append(legend).append("\n\n").toString();
    }
}
