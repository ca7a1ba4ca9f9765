package org.tableweather.analyzers.host;

import java.util.List;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.tableweather.analyzers.spi.Plot;

/**
 * What a point says when it is pointed at.
 *
 * @param names of the series, as shown
 * @param plot with the labels
 * @param rows whether the abscissa is no more than a place
 */
record PointWords(List<String> names, Plot plot, boolean rows) {

    String of(YIntervalSeriesCollection points, int series, int item) {
        double low = points.getStartYValue(series, item);
        double high = points.getEndYValue(series, item);
        String across = rows ? "" : plot.xLabel() + ": " + PlotWords.figure(points.getXValue(series, item)) + "; ";
        String bar = high > low ? " (" + PlotWords.figure(low) + " to " + PlotWords.figure(high) + ")" : "";
        return names.get(series) + "; " + across + plot.yLabel() + ": "
                + PlotWords.figure(points.getYValue(series, item)) + bar;
    }
}
