package org.tableweather.analyzers.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.spi.Plot;

/** A plot for those who do not see it. */
final class PlotWords {

    private static final int MOST_NAMED = 12;

    private PlotWords() {}

    /** Axes, lines and bands with their ends, and how many points there are, or what each says. */
    static String of(Plot plot) {
        List<String> words = new ArrayList<>();
        words.add("Across: " + plot.xLabel() + ". Up: " + plot.yLabel() + ".");
        List<Plot.Series> points = new ArrayList<>();
        for (Plot.Series series : plot.series()) {
            if (series.mark() == Plot.Mark.POINTS) {
                points.add(series);
            } else if (!series.x().isEmpty()) {
                words.add((series.mark() == Plot.Mark.LINE ? "Line " : "Band ") + series.name() + ": from "
                        + end(series, 0) + " to " + end(series, series.x().size() - 1) + ".");
            }
        }
        words.add(points(points));
        return String.join(" ", words).strip();
    }

    private static String end(Plot.Series series, int at) {
        return "(" + figure(series.x().get(at)) + ", "
                + (series.mark() == Plot.Mark.LINE
                        ? figure(series.y().get(at))
                        : figure(series.lower().get(at)) + " to "
                                + figure(series.upper().get(at)))
                + ")";
    }

    private static String points(List<Plot.Series> all) {
        long count = all.stream().mapToLong(series -> series.x().size()).sum();
        if (all.isEmpty()) {
            return "";
        }
        if (count != all.size() || count > MOST_NAMED) {
            return "Points: " + count + " in " + all.size() + " series.";
        }
        Map<String, String> names =
                RoomNames.of(all.stream().map(Plot.Series::name).toList());
        List<String> each = new ArrayList<>();
        for (Plot.Series series : all) {
            String bar = series.lower().isEmpty()
                    ? ""
                    : " (" + figure(series.lower().get(0)) + " to "
                            + figure(series.upper().get(0)) + ")";
            each.add(names.get(series.name()) + " " + figure(series.y().get(0)) + bar);
        }
        return "Points: " + String.join("; ", each) + ".";
    }

    /** Three digits or more, without an exponent where one can be avoided. */
    static String figure(double value) {
        double size = Math.abs(value);
        if (size >= 10 || size == 0) {
            return String.format(Locale.ROOT, "%.1f", value);
        }
        return String.format(Locale.ROOT, size >= 1 ? "%.2f" : "%.3g", value);
    }
}
