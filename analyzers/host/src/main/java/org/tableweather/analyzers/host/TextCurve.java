package org.tableweather.analyzers.host;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.spi.Plot;

/** The pooled curve in characters, for a terminal: bands, mean, and a letter for every room's points. */
public final class TextCurve {
    private static final int ROWS = 20;
    private static final int MARGIN = 9;
    private static final int LEAST_COLUMNS = 40;
    private static final int MOST_COLUMNS = 120;
    private static final String LETTERS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /** The characters to draw with. */
    public enum Ink {
        /** Block characters. */
        UNICODE(new char[] {'░', '▒', '▓'}, '━', '•', '│', '┤', '─', '┬', '└'),
        /** For terminals that know no more. */
        ASCII(new char[] {'.', ':', '%'}, '=', 'o', '|', '+', '-', '+', '+');

        private final char[] bands;
        private final char line;
        private final char point;
        private final char side;
        private final char sideTick;
        private final char floor;
        private final char floorTick;
        private final char corner;

        Ink(char[] bands, char line, char point, char side, char sideTick, char floor, char floorTick, char corner) {
            this.bands = bands;
            this.line = line;
            this.point = point;
            this.side = side;
            this.sideTick = sideTick;
            this.floor = floor;
            this.floorTick = floorTick;
            this.corner = corner;
        }
    }

    private final Plot curve;
    private final Ink ink;
    private final int columns;
    private final Ticks x;
    private final Ticks y;
    private final char[][] cells;
    private final List<String> legend = new ArrayList<>();

    private TextCurve(Plot curve, int columns, Ink ink) {
        this.curve = curve;
        this.ink = ink;
        this.columns = Math.max(LEAST_COLUMNS, Math.min(MOST_COLUMNS, columns));
        this.x = Ticks.over(curve.series().stream().flatMap(series -> series.x().stream()), 8);
        this.y = Ticks.over(
                curve.series().stream()
                        .flatMap(series -> List.of(series.y(), series.lower(), series.upper()).stream()
                                .flatMap(List::stream)),
                8);
        this.cells = new char[ROWS][this.columns - MARGIN];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
    }

    /**
     * Draws.
     *
     * @param run an analysis with a plot {@code curve}
     * @param columns width of the terminal; kept within 40 and 120
     * @param ink which characters
     * @return lines, each ended
     * @throws ChartUnavailable when there is no such plot
     */
    public static String of(AnalysisRun run, int columns, Ink ink) {
        Plot curve = CurveChart.curve(run);
        StringBuilder text = new StringBuilder(curve.title()).append('\n');
        text.append(run.dataset().inWords()).append('\n');
        if (run.dataset().invented()) {
            text.append(PlotChart.INVENTED.replace('\u2013', ink == Ink.ASCII ? '-' : '\u2013'))
                    .append('\n');
        }
        return text.append('\n')
                .append(new TextCurve(curve, columns, ink).draw())
                .toString();
    }

    private String draw() {
        paintBands();
        paintLines();
        paintPoints();
        StringBuilder text = new StringBuilder(curve.yLabel()).append('\n');
        for (int row = 0; row < ROWS; row++) {
            text.append(side(row))
                    .append(new String(cells[row]).stripTrailing())
                    .append('\n');
        }
        text.append(floor()).append('\n');
        text.append(floorLabels()).append('\n');
        text.append(" ".repeat(MARGIN)).append(curve.xLabel()).append("\n\n");
        return text.append(wrapped(legend)).toString();
    }

    private void paintBands() {
        List<Plot.Series> bands = of(Plot.Mark.BAND);
        for (int i = 0; i < bands.size(); i++) {
            Plot.Series band = bands.get(i);
            char shade = ink.bands[Math.min(i, ink.bands.length - 1)];
            for (int column = 0; column < cells[0].length; column++) {
                int top = row(at(column, band.x(), band.upper()));
                int bottom = row(at(column, band.x(), band.lower()));
                for (int row = Math.max(0, top); row <= Math.min(ROWS - 1, bottom); row++) {
                    cells[row][column] = shade;
                }
            }
            legend.add(shade + " " + band.name());
        }
    }

    private void paintLines() {
        for (Plot.Series line : of(Plot.Mark.LINE)) {
            for (int column = 0; column < cells[0].length; column++) {
                put(row(at(column, line.x(), line.y())), column, ink.line);
            }
            legend.add(0, ink.line + " " + line.name());
        }
    }

    private void paintPoints() {
        List<Plot.Series> rooms = of(Plot.Mark.POINTS);
        Map<String, String> names =
                RoomNames.of(rooms.stream().map(Plot.Series::name).toList());
        boolean lettered = rooms.size() <= LETTERS.length();
        for (int room = 0; room < rooms.size(); room++) {
            Plot.Series points = rooms.get(room);
            char mark = lettered ? LETTERS.charAt(room) : ink.point;
            for (int i = 0; i < points.x().size(); i++) {
                put(row(points.y().get(i)), column(points.x().get(i)), mark);
            }
            if (lettered) {
                legend.add(mark + " " + names.get(points.name()));
            }
        }
        if (!lettered) {
            legend.add(ink.point + " " + rooms.size() + " rooms");
        }
    }

    private void put(int row, int column, char mark) {
        if (row >= 0 && row < ROWS && column >= 0 && column < cells[0].length) {
            cells[row][column] = mark;
        }
    }

    // linear between the neighbouring points; NaN (drawn nowhere) outside them
    private double at(int column, List<Double> xs, List<Double> ys) {
        double wanted = Math.min(x.high(), x.low() + (x.high() - x.low()) * column / (cells[0].length - 1.0));
        for (int i = 1; i < xs.size(); i++) {
            double before = xs.get(i - 1);
            double after = xs.get(i);
            if (before <= wanted && wanted <= after && after > before) {
                double share = (wanted - before) / (after - before);
                return ys.get(i - 1) + share * (ys.get(i) - ys.get(i - 1));
            }
        }
        return Double.NaN;
    }

    private int row(double value) {
        return Double.isNaN(value)
                ? Integer.MIN_VALUE
                : (int) Math.round((y.high() - value) / (y.high() - y.low()) * (ROWS - 1));
    }

    private int column(double value) {
        return (int) Math.round((value - x.low()) / (x.high() - x.low()) * (cells[0].length - 1));
    }

    private String side(int row) {
        for (double tick : y.values()) {
            if (row(tick) == row) {
                return String.format(Locale.ROOT, "%" + (MARGIN - 2) + "s ", y.label(tick)) + ink.sideTick;
            }
        }
        return " ".repeat(MARGIN - 1) + ink.side;
    }

    private String floor() {
        char[] line = new char[cells[0].length];
        Arrays.fill(line, ink.floor);
        for (double tick : x.values()) {
            line[column(tick)] = ink.floorTick;
        }
        return " ".repeat(MARGIN - 1) + ink.corner + new String(line);
    }

    private String floorLabels() {
        StringBuilder line = new StringBuilder(" ".repeat(columns + MARGIN));
        for (double tick : x.values()) {
            String label = x.label(tick);
            int start = MARGIN + column(tick) - (label.length() - 1) / 2;
            line.replace(start, start + label.length(), label);
        }
        return line.toString().stripTrailing();
    }

    private String wrapped(List<String> items) {
        StringBuilder text = new StringBuilder();
        int used = 0;
        for (String item : items) {
            if (used > 0 && used + 3 + item.length() > columns) {
                text.append('\n');
                used = 0;
            }
            text.append(used == 0 ? "" : "   ").append(item);
            used += (used == 0 ? 0 : 3) + item.length();
        }
        return text.append('\n').toString();
    }

    private List<Plot.Series> of(Plot.Mark mark) {
        return curve.series().stream().filter(series -> series.mark() == mark).toList();
    }
}
