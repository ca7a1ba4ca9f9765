package org.tableweather.server.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.tableweather.analyzers.spi.Plot;

/**
 * A plot with no more rooms than a page can carry. Which are drawn does not depend on their figures: every third, say, in the order
 * of the analysis, or the first of a list by name.
 *
 * @param plot to be drawn
 * @param note what was left out and where it is, in words; empty when nothing was
 */
record PlotSample(Plot plot, String note) {
    /** Most series of points that a page draws. */
    static final int MOST = 300;

    static PlotSample of(Plot whole) {
        List<Plot.Series> points = whole.series().stream()
                .filter(series -> series.mark() == Plot.Mark.POINTS)
                .toList();
        if (points.size() <= MOST) {
            return new PlotSample(whole, "");
        }
        boolean list = points.stream().allMatch(series -> series.x().size() == 1);
        int step = list ? 1 : (points.size() + MOST - 1) / MOST;
        List<Plot.Series> kept = new ArrayList<>();
        int seen = 0;
        int drawn = 0;
        for (Plot.Series series : whole.series()) {
            boolean isPoints = series.mark() == Plot.Mark.POINTS;
            if (!isPoints || drawn < MOST && seen % step == 0) {
                kept.add(series);
                drawn += isPoints ? 1 : 0;
            }
            seen += isPoints ? 1 : 0;
        }
        return new PlotSample(
                new Plot(whole.id(), whole.title(), whole.xLabel(), whole.yLabel(), kept),
                note(drawn, points.size(), step));
    }

    private static String note(int drawn, int all, int step) {
        String which = step == 1 ? "the first of the list" : "every " + ordinal(step);
        return String.format(
                Locale.ROOT,
                "Drawn are %,d of %,d rooms, %s, whatever their figures: CSV and JSON hold all.",
                drawn,
                all,
                which);
    }

    private static String ordinal(int number) {
        boolean teen = number % 100 / 10 == 1;
        String end = teen
                ? "th"
                : switch (number % 10) {
                    case 1 -> "st";
                    case 2 -> "nd";
                    case 3 -> "rd";
                    default -> "th";
                };
        return number + end;
    }
}
