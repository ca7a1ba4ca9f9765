package org.tableweather.server.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
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
 * @param note what was left out of it, in words; empty when nothing was
 */
record PlotFigure(String id, String title, String wide, String narrow, String note) {
    private static final String CURVE = "curve";

    /** All plots; none when there is no answer, or no font on this machine. */
    static List<PlotFigure> all(AnalysisRun run) {
        return drawn(run, id -> true);
    }

    /** The pooled curve alone; none when the analyzer draws none. */
    static List<PlotFigure> curve(AnalysisRun run) {
        return drawn(run, CURVE::equals);
    }

    private static List<PlotFigure> drawn(AnalysisRun run, Predicate<String> wanted) {
        List<PlotFigure> figures = new ArrayList<>();
        try {
            for (Plot plot : run.analysis().fold(Analysis.Estimated::plots, none -> List.<Plot>of())) {
                if (wanted.test(plot.id())) {
                    PlotSample sample = PlotSample.of(plot);
                    figures.add(new PlotFigure(
                            plot.id(),
                            plot.title(),
                            PlotChart.svg(run, sample.plot(), ChartSize.page()),
                            PlotChart.svg(run, sample.plot(), ChartSize.phone()),
                            sample.note()));
                }
            }
        } catch (ChartUnavailable e) {
            // the page has the figures all the same
            return List.of();
        }
        return figures;
    }
}
