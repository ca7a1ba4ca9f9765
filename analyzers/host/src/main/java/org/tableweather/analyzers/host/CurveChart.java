package org.tableweather.analyzers.host;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Supplier;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.encoders.EncoderUtil;
import org.jfree.chart.encoders.ImageFormat;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Plot;

/**
 * The pooled curve as a picture: every room's points, the mean, its band, and the wider band of a new room. Equal
 * analyses give equal bytes on one machine; text is laid out with the machine's fonts, none is embedded.
 */
public final class CurveChart {
    static final String INVENTED = "INVENTED DATA \u2013 made up to show the program, not measured";
    private static final int PNG_SCALE = 2;
    private static final String NO_FONTS = "this machine has no fonts that Java can draw with: install fontconfig and a"
            + " font (Debian: apt-get install fontconfig fonts-dejavu-core); the numbers need no font: use --json";

    private CurveChart() {}

    /**
     * The curve as SVG: scales with its {@code viewBox}, has {@code role="img"}, a title, a description, and a title on
     * every point. Its root is {@code <svg>}, without an XML declaration, so that it can stand in a page.
     *
     * @param run an analysis with a plot {@code curve}
     * @param size of the paper
     * @throws ChartUnavailable when there is no such plot, or no font
     */
    public static String svg(AnalysisRun run, ChartSize size) {
        Plot curve = curve(run);
        return withFonts(() -> {
            LabelledSvg paper = LabelledSvg.paper(size, idPrefix(run, size));
            chart(run, curve, size).draw(paper, paperArea(size));
            String mark = run.dataset().invented() ? INVENTED + ". " : "";
            return paper.text(mark + curve.title(), mark + description(run));
        });
    }

    /**
     * The curve as PNG, with two dots per CSS pixel.
     *
     * @param run an analysis with a plot {@code curve}
     * @param size of the paper
     * @throws ChartUnavailable when there is no such plot, or no font
     */
    public static byte[] png(AnalysisRun run, ChartSize size) {
        Plot curve = curve(run);
        return withFonts(() -> {
            JFreeChart chart = chart(run, curve, size);
            BufferedImage image = new BufferedImage(
                    size.widthPx() * PNG_SCALE, size.heightPx() * PNG_SCALE, BufferedImage.TYPE_INT_RGB);
            var paper = image.createGraphics();
            paper.scale(PNG_SCALE, PNG_SCALE);
            chart.draw(paper, paperArea(size));
            paper.dispose();
            return encoded(image);
        });
    }

    private static JFreeChart chart(AnalysisRun run, Plot curve, ChartSize size) {
        return CurveDrawing.chart(curve, run.dataset().inWords(), run.dataset().invented(), size);
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

    private static String description(AnalysisRun run) {
        String sentence = run.analysis().fold(Analysis.Estimated::sentence, Analysis.Declined::detail);
        return sentence + " Made from " + run.dataset().inWords() + ".";
    }

    // two charts in one page must not share ids; equal charts may
    private static String idPrefix(AnalysisRun run, ChartSize size) {
        String parameters = run.analysis()
                .fold(Analysis.Estimated::parameters, Analysis.Declined::parameters)
                .toString();
        String content = run.info().id() + run.dataset().hash() + parameters + size;
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
