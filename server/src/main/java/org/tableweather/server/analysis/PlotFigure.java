package org.tableweather.server.analysis;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.PlotChart;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Plot;

/**
 * A plot of an analysis as a page shows it.
 *
 * @param id of the plot
 * @param title in words
 * @param wide SVG for a page
 * @param narrow SVG for a phone
 */
record PlotFigure(String id, String title, String wide, String narrow) {

    /** All plots; none when there is no answer, or no font on this machine. */
    static List<PlotFigure> all(AnalysisRun run) {
        List<PlotFigure> figures = new ArrayList<>();
        try {
            for (Plot plot : run.analysis().fold(Analysis.Estimated::plots, none -> List.<Plot>of())) {
                figures.add(new PlotFigure(
                        plot.id(),
                        plot.title(),
                        PlotChart.svg(run, plot, ChartSize.page()),
                        PlotChart.svg(run, plot, ChartSize.phone())));
            }
        } catch (ChartUnavailable e) {
            // the page has the figures all the same
            return List.of();
        }
        return figures;
    }
}
