package org.tableweather.analyzers.host;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.tableweather.analyzers.spi.Plot;

/** One plot on paper: bands behind, then the points, lines on top. */
final class PlotDrawing {
    private static final Color TEXT = new Color(0x1d2733);
    private static final Color QUIET = new Color(0x55616e);
    private static final Color GRID = new Color(0xe3e7eb);
    private static final Color WARNING = new Color(0x8c1c13);
    private static final Color WARNING_PAPER = new Color(0xfdf0e7);
    /** Mean width of a letter over the height of its font. */
    private static final double GLYPH = 0.52;

    private static final Color[] BANDS = {
        new Color(31, 86, 128, 30), new Color(31, 86, 128, 80), new Color(31, 86, 128, 110)
    };

    static {
        // the workaround draws the rotated label as outlines, which a screen reader and a search cannot read
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    private final Plot curve;
    private final Optional<NamedRows> rows;
    private final List<String> lineNames;
    private final ChartSize size;
    private final LegendItemCollection pooledItems = new LegendItemCollection();
    private final LegendItemCollection roomItems = new LegendItemCollection();

    private PlotDrawing(Plot curve, ChartSize size) {
        this.curve = curve;
        rows = NamedRows.of(curve);
        lineNames = of(Plot.Mark.LINE).stream().map(Plot.Series::name).toList();
        this.size = size;
    }

    /**
     * Draws.
     *
     * @param curve what
     * @param subtitle what it was made from
     * @param invented whether to mark it as made up
     * @param size of the paper
     */
    static JFreeChart chart(Plot curve, String subtitle, boolean invented, ChartSize size) {
        return new PlotDrawing(curve, size).draw(subtitle, invented);
    }

    private JFreeChart draw(String subtitle, boolean invented) {
        XYPlot plot = new XYPlot(null, across(), up(), null);
        rows.ifPresent(named -> plot.setOrientation(PlotOrientation.HORIZONTAL));
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        plot.setRangeGridlineStroke(new BasicStroke(1f));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        addBands(plot);
        addPoints(plot);
        addLines(plot);

        JFreeChart chart = new JFreeChart(curve.title(), font(Font.BOLD, 1.25), plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(gap(), gap(), gap(), gap() * 1.5));
        chart.getTitle().setPaint(TEXT);
        chart.getTitle().setHorizontalAlignment(HorizontalAlignment.LEFT);
        chart.getTitle().setTextAlignment(HorizontalAlignment.LEFT);
        chart.addSubtitle(note(subtitle, QUIET, Font.PLAIN));
        if (invented) {
            chart.addSubtitle(inventedMark());
        }
        apartLabels(chart);
        chart.addSubtitle(legendBelow(roomItems));
        chart.addSubtitle(legendBelow(pooledItems));
        return chart;
    }

    private void addBands(XYPlot plot) {
        List<Plot.Series> bands = of(Plot.Mark.BAND);
        for (int i = 0; i < bands.size(); i++) {
            Color paint = bandInk(bands.get(i).name(), i);
            DeviationRenderer renderer = new DeviationRenderer(false, false);
            renderer.setSeriesFillPaint(0, paint);
            renderer.setAlpha(1f);
            add(plot, intervals(List.of(bands.get(i))), renderer);
            LegendItem item = new LegendItem(bands.get(i).name(), paint);
            item.setShape(new Rectangle2D.Double(-7, -4, 14, 8));
            pooledItems.add(withFont(item));
        }
    }

    // with several lines a band has the ink of the line that its name begins with
    private Color bandInk(String name, int index) {
        if (lineNames.size() > 1) {
            for (int line = 0; line < lineNames.size(); line++) {
                if (name.startsWith(lineNames.get(line))) {
                    return LineInk.of(line).band();
                }
            }
        }
        return BANDS[Math.min(index, BANDS.length - 1)];
    }

    private void addPoints(XYPlot plot) {
        List<Plot.Series> rooms = of(Plot.Mark.POINTS);
        Map<String, String> names =
                RoomNames.of(rooms.stream().map(Plot.Series::name).toList());
        if (rooms.isEmpty()) {
            return;
        }
        List<RoomStyle> styles = new ArrayList<>();
        for (int i = 0; i < rooms.size(); i++) {
            styles.add(this.rows.isPresent() ? RoomStyle.plain() : RoomStyle.of(i, rooms.size()));
        }
        PointWords words = new PointWords(List.copyOf(names.values()), curve, this.rows.isPresent());
        add(plot, intervals(rooms), new PointRenderer(styles, words, radius(rooms.size())));
        if (this.rows.isPresent()) {
            return;
        }
        if (rooms.size() > RoomStyle.DISTINCT) {
            roomItems.add(withFont(roomItem(rooms.size() + " rooms", styles.get(0))));
            return;
        }
        for (int i = 0; i < rooms.size(); i++) {
            roomItems.add(withFont(roomItem(names.get(rooms.get(i).name()), styles.get(i))));
        }
    }

    private void addLines(XYPlot plot) {
        List<Plot.Series> lines = of(Plot.Mark.LINE);
        for (int i = 0; i < lines.size(); i++) {
            Plot.Series line = lines.get(i);
            LineInk ink = LineInk.of(i);
            Stroke stroke = ink.stroke(size.fontPx() / (i == 0 ? 6f : 8f));
            XYSeries series = new XYSeries(line.name(), false);
            for (int at = 0; at < line.x().size(); at++) {
                series.add(edge(line.x().get(at)), line.y().get(at).doubleValue());
            }
            XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
            renderer.setDrawSeriesLineAsPath(true);
            renderer.setSeriesPaint(0, ink.ink());
            renderer.setSeriesStroke(0, stroke);
            add(plot, new XYSeriesCollection(series), renderer);
            LegendItem item =
                    new LegendItem(line.name(), null, null, null, new Line2D.Double(-16, 0, 16, 0), stroke, ink.ink());
            pooledItems.add(withFont(item));
        }
    }

    private static void add(XYPlot plot, XYDataset data, XYItemRenderer renderer) {
        int index = plot.getDataset(0) == null ? 0 : plot.getDatasetCount();
        plot.setDataset(index, data);
        plot.setRenderer(index, renderer);
    }

    private YIntervalSeriesCollection intervals(List<Plot.Series> all) {
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        for (Plot.Series one : all) {
            YIntervalSeries series = new YIntervalSeries(one.name(), false, true);
            for (int i = 0; i < one.x().size(); i++) {
                double y = one.y().get(i);
                series.add(edge(one, i), y, bound(one.lower(), i, y), bound(one.upper(), i, y));
            }
            data.addSeries(series);
        }
        return data;
    }

    private double edge(Plot.Series series, int at) {
        return series.mark() == Plot.Mark.POINTS
                ? series.x().get(at)
                : edge(series.x().get(at));
    }

    private double edge(double x) {
        return rows.map(named -> named.edge(x)).orElse(x);
    }

    private static double bound(List<Double> bounds, int i, double y) {
        return i < bounds.size() && Double.isFinite(bounds.get(i)) ? bounds.get(i) : y;
    }

    private List<Plot.Series> of(Plot.Mark mark) {
        return curve.series().stream().filter(series -> series.mark() == mark).toList();
    }

    private LegendItem roomItem(String name, RoomStyle style) {
        LegendItem item = new LegendItem(
                name,
                null,
                null,
                null,
                style.at(0, 0, radius(1)),
                style.filled() ? style.ink() : Color.WHITE,
                new BasicStroke(style.filled() ? 0.6f : 1.6f),
                style.ink());
        return item;
    }

    private LegendItem withFont(LegendItem item) {
        item.setLabelFont(font(Font.PLAIN, 0.9));
        item.setLabelPaint(TEXT);
        return item;
    }

    private NumberAxis across() {
        String label = fits(curve.xLabel(), rows.isPresent() ? size.heightPx() / 2 : size.widthPx() * 3 / 4);
        return rows.<NumberAxis>map(named -> inked(named.axis(label, font(Font.PLAIN, 0.9))))
                .orElseGet(() -> axis(label));
    }

    private NumberAxis up() {
        return axis(fits(curve.yLabel(), rows.isPresent() ? size.widthPx() * 3 / 4 : size.heightPx() / 2));
    }

    // a label beside an axis is cut where it is longer than the axis
    private String fits(String label, int px) {
        return label.length() * size.fontPx() * GLYPH <= px ? label : null;
    }

    /** Labels that do not fit beside their axis stand on lines of their own. */
    private void apartLabels(JFreeChart chart) {
        XYPlot plot = chart.getXYPlot();
        boolean turned = rows.isPresent();
        if (plot.getRangeAxis().getLabel() == null) {
            chart.addSubtitle(note((turned ? "\u2192 " : "\u2191 ") + curve.yLabel(), TEXT, Font.PLAIN));
        }
        if (plot.getDomainAxis().getLabel() == null) {
            chart.addSubtitle(note((turned ? "\u2193 " : "\u2192 ") + curve.xLabel(), TEXT, Font.PLAIN));
        }
    }

    private NumberAxis axis(String label) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setAutoRangeStickyZero(false);
        axis.setLowerMargin(0.03);
        axis.setUpperMargin(0.03);
        axis.setTickLabelFont(font(Font.PLAIN, 0.9));
        NumberFormat format = NumberFormat.getInstance(Locale.ROOT);
        format.setMaximumFractionDigits(6);
        axis.setNumberFormatOverride(format);
        return inked(axis);
    }

    private NumberAxis inked(NumberAxis axis) {
        axis.setLabelFont(font(Font.PLAIN, 1));
        axis.setLabelPaint(TEXT);
        axis.setTickLabelPaint(QUIET);
        axis.setAxisLinePaint(QUIET);
        axis.setTickMarkPaint(QUIET);
        // the insets also keep the ticks apart
        axis.setTickLabelInsets(
                new RectangleInsets(rows.isPresent() ? 1 : gap() / 2, 4, rows.isPresent() ? 1 : gap() / 2, 4));
        return axis;
    }

    private TextTitle note(String words, Color paint, int style) {
        TextTitle title = new TextTitle(words, font(style, 0.95));
        title.setPaint(paint);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setTextAlignment(HorizontalAlignment.LEFT);
        title.setMargin(3, 0, 0, 0);
        return title;
    }

    private TextTitle inventedMark() {
        TextTitle mark = note(PlotChart.INVENTED, WARNING, Font.BOLD);
        mark.setBackgroundPaint(WARNING_PAPER);
        mark.setFrame(new BlockBorder(WARNING));
        mark.setPadding(3, 6, 3, 6);
        mark.setMargin(gap() / 2, 0, gap() / 2, 0);
        return mark;
    }

    private LegendTitle legendBelow(LegendItemCollection items) {
        LegendTitle title = new LegendTitle(() -> items);
        title.setHorizontalAlignment(HorizontalAlignment.LEFT);
        title.setPosition(RectangleEdge.BOTTOM);
        title.setItemFont(font(Font.PLAIN, 0.9));
        title.setBackgroundPaint(Color.WHITE);
        title.setMargin(gap() / 2, 0, 0, 0);
        title.setItemLabelPadding(new RectangleInsets(1, 3, 1, gap()));
        return title;
    }

    private Font font(int style, double scale) {
        return new Font(Font.SANS_SERIF, style, (int) Math.round(size.fontPx() * scale));
    }

    private double gap() {
        return size.fontPx() * 0.8;
    }

    private double radius(int rooms) {
        double one = size.fontPx() * 0.32;
        return rooms > RoomStyle.DISTINCT ? one * 0.6 : one;
    }
}
