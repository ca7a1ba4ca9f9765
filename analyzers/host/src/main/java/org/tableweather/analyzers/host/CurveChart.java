package org.tableweather.analyzers.host;

import org.tableweather.analyzers.spi.Plot;

/** The pooled curve as a picture: every room's points, the mean, its band, and the wider band of a new room. */
public final class CurveChart {

    private CurveChart() {}

    /**
     * The curve as SVG.
     *
     * @param run an analysis with a plot {@code curve}
     * @param size of the paper
     * @throws ChartUnavailable when there is no such plot, or no font
     * @see PlotChart#svg
     */
    public static String svg(AnalysisRun run, ChartSize size) {
        return PlotChart.svg(run, curve(run), size);
    }

    /**
     * The curve as PNG.
     *
     * @param run an analysis with a plot {@code curve}
     * @param size of the paper
     * @throws ChartUnavailable when there is no such plot, or no font
     * @see PlotChart#png
     */
    public static byte[] png(AnalysisRun run, ChartSize size) {
        return PlotChart.png(run, curve(run), size);
    }

    /** The plot {@code curve} of an analysis. */
    static Plot curve(AnalysisRun run) {
        return run.analysis()
                .<Plot>fold(
                        answer -> answer.plots().stream()
                                .filter(plot -> plot.id().equals("curve"))
                                .findFirst()
                                .orElseThrow(() -> new ChartUnavailable(
                                        run.info().id() + " draws no curve: use --json for its figures")),
                        none -> {
                            throw new ChartUnavailable("there is no curve to draw: "
                                    + none.reason().schemaName() + ", " + none.detail());
                        });
    }
}
