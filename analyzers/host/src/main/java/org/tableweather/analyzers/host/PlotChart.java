package org.tableweather.analyzers.host;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.Supplier;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.encoders.EncoderUtil;
import org.jfree.chart.encoders.ImageFormat;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Plot;

/**
 * Any plot of an analysis as a picture. Equal analyses give equal bytes on one machine; text is laid out with the machine's
 * fonts, none is embedded.
 */
public final class PlotChart {
    static final String INVENTED = "INVENTED DATA \u2013 made up to show the program, not measured";
    private static final int PNG_SCALE = 2;
    private static final String NO_FONTS = "this machine has no fonts that Java can draw with: install fontconfig and a"
            + " font (Debian: apt-get install fontconfig fonts-dejavu-core); the numbers need no font: use --json";

    private PlotChart() {}

    /**
     * All plots of an analysis, in its order.
     *
     * @throws ChartUnavailable when it gives no answer; the message says why
     */
    public static List<Plot> plots(AnalysisRun run) {
        return run.analysis().<List<Plot>>fold(Analysis.Estimated::plots, none -> {
            throw new ChartUnavailable(
                    "there is nothing to draw: " + none.reason().schemaName() + ", " + none.detail());
        });
    }

    /**
     * The plot as SVG: scales with its {@code viewBox}, has {@code role="img"}, a title, a description, and a title on every
     * point. Its root is {@code <svg>}, without an XML declaration, so that it can stand in a page.
     *
     * @param run the analysis that it belongs to
     * @param plot one of its plots
     * @param size of the paper; a plot of many named rows takes more height
     * @throws ChartUnavailable when there is no font
     */
    public static String svg(AnalysisRun run, Plot plot, ChartSize size) {
        ChartSize paperSize = NamedRows.room(plot, size);
        return withFonts(() -> {
            LabelledSvg paper = LabelledSvg.paper(paperSize, idPrefix(run, plot, paperSize));
            chart(run, plot, paperSize).draw(paper, paperArea(paperSize));
            String mark = run.dataset().invented() ? INVENTED + ". " : "";
            return paper.text(mark + plot.title(), mark + description(run, plot));
        });
    }

    /**
     * A plot that belongs to no analysis, as SVG in the same form.
     *
     * @param plot what to draw
     * @param subtitle what it was made from
     * @param invented whether to mark it as made up
     * @param size of the paper; a plot of many named rows takes more height
     * @throws ChartUnavailable when there is no font
     */
    public static String svg(Plot plot, String subtitle, boolean invented, ChartSize size) {
        ChartSize paperSize = NamedRows.room(plot, size);
        return withFonts(() -> {
            String prefix = "tw" + Integer.toHexString((plot.id() + subtitle + paperSize).hashCode()) + "-";
            LabelledSvg paper = LabelledSvg.paper(paperSize, prefix);
            PlotDrawing.chart(plot, subtitle, invented, paperSize).draw(paper, paperArea(paperSize));
            String mark = invented ? INVENTED + ". " : "";
            return paper.text(mark + plot.title(), mark + PlotWords.of(plot) + " Made from " + subtitle + ".");
        });
    }

    /**
     * The plot as PNG, with two dots per CSS pixel.
     *
     * @param run the analysis that it belongs to
     * @param plot one of its plots
     * @param size of the paper; a plot of many named rows takes more height
     * @throws ChartUnavailable when there is no font
     */
    public static byte[] png(AnalysisRun run, Plot plot, ChartSize size) {
        ChartSize paperSize = NamedRows.room(plot, size);
        return withFonts(() -> {
            JFreeChart chart = chart(run, plot, paperSize);
            BufferedImage image = new BufferedImage(
                    paperSize.widthPx() * PNG_SCALE, paperSize.heightPx() * PNG_SCALE, BufferedImage.TYPE_INT_RGB);
            var paper = image.createGraphics();
            paper.scale(PNG_SCALE, PNG_SCALE);
            chart.draw(paper, paperArea(paperSize));
            paper.dispose();
            return encoded(image);
        });
    }

    private static JFreeChart chart(AnalysisRun run, Plot plot, ChartSize size) {
        JFreeChart chart =
                PlotDrawing.chart(plot, run.dataset().inWords(), run.dataset().invented(), size);
        if (EqualScales.areWanted(plot)) {
            EqualScales.apply(chart, size);
        }
        return chart;
    }

    private static String description(AnalysisRun run, Plot plot) {
        String sentence = run.analysis().fold(Analysis.Estimated::sentence, Analysis.Declined::detail);
        String words = plot.id().equals("curve") ? sentence : PlotWords.of(plot) + " The answer: " + sentence;
        return words + " Made from " + run.dataset().inWords() + ".";
    }

    // two charts in one page must not share ids; equal charts may
    private static String idPrefix(AnalysisRun run, Plot plot, ChartSize size) {
        String parameters = run.analysis()
                .fold(Analysis.Estimated::parameters, Analysis.Declined::parameters)
                .toString();
        String content = run.info().id() + plot.id() + run.dataset().hash() + parameters + size;
        return "tw" + Integer.toHexString(content.hashCode()) + "-";
    }

    private static Rectangle2D paperArea(ChartSize size) {
        return new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx());
    }

    private static byte[] encoded(BufferedImage image) {
        try {
            return EncoderUtil.encode(image, ImageFormat.PNG);
        } catch (IOException e) {
            throw new UncheckedIOException("memory can be written", e);
        }
    }

    // A bare machine fails deep inside the font code, with errors of several types: missing libfreetype is a
    // LinkageError, missing fontconfig an InternalError at first and NoClassDefFoundError afterwards.
    static <T> T withFonts(Supplier<T> drawing) {
        try {
            return drawing.get();
        } catch (LinkageError | InternalError e) {
            throw new ChartUnavailable(NO_FONTS, e);
        } catch (RuntimeException e) {
            if (String.valueOf(e.getMessage()).contains("Fontconfig")) {
                throw new ChartUnavailable(NO_FONTS, e);
            }
            throw e;
        }
    }
}
