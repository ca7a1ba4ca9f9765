package org.tableweather.analyzers.spi;

import java.util.List;

/**
 * A plot as data: whoever draws it chooses ink and paper.
 *
 * <p>Point series that each hold one point, at x = 1, 2, 3 ..., are rows of a list: they are drawn by name, the first at the top.
 * With several lines, a band whose name begins with that of a line belongs to it. A plot {@code table} is a table seen from above: both
 * axes have one scale.
 *
 * @param id {@code curve}, {@code forest} ...
 * @param title in words
 * @param xLabel with unit
 * @param yLabel with unit
 * @param series what is drawn, back to front
 */
public record Plot(String id, String title, String xLabel, String yLabel, List<Series> series) {

    public Plot {
        series = List.copyOf(series);
    }

    /** How a series is drawn. */
    public enum Mark {
        /** A line through (x, y). */
        LINE,
        /** An area between lower and upper. */
        BAND,
        /** A point at (x, y), with a bar from lower to upper where they are finite. */
        POINTS
    }

    /**
     * One series; all arrays have the same length.
     *
     * @param name for the legend; points of a room carry the room key
     * @param mark how it is drawn
     * @param x abscissa
     * @param y ordinate; for a band the middle
     * @param lower of a band or bar; empty for none
     * @param upper of a band or bar; empty for none
     */
    public record Series(
            String name, Mark mark, List<Double> x, List<Double> y, List<Double> lower, List<Double> upper) {

        public Series {
            x = List.copyOf(x);
            y = List.copyOf(y);
            lower = List.copyOf(lower);
            upper = List.copyOf(upper);
        }
    }
}
