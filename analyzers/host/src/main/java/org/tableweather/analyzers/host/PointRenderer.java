package org.tableweather.analyzers.host;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** Draws each room's points in its own shape and ink, with a bar where the point has bounds. */
final class PointRenderer extends AbstractXYItemRenderer {
    private static final long serialVersionUID = 1L;
    private static final Color INSIDE = Color.WHITE;

    private final transient List<RoomStyle> styles;
    private final transient PointWords words;
    private final double radiusPx;

    PointRenderer(List<RoomStyle> styles, PointWords words, double radiusPx) {
        this.styles = styles;
        this.words = words;
        this.radiusPx = radiusPx;
    }

    @Override
    public Range findRangeBounds(XYDataset dataset) {
        return DatasetUtils.findRangeBounds(dataset, true);
    }

    @Override
    public void drawItem(
            Graphics2D g2,
            XYItemRendererState state,
            Rectangle2D dataArea,
            PlotRenderingInfo info,
            XYPlot plot,
            ValueAxis domainAxis,
            ValueAxis rangeAxis,
            XYDataset dataset,
            int series,
            int item,
            CrosshairState crosshairState,
            int pass) {
        YIntervalSeriesCollection points = (YIntervalSeriesCollection) dataset;
        double x = domainAxis.valueToJava2D(points.getXValue(series, item), dataArea, plot.getDomainAxisEdge());
        double y = rangeAxis.valueToJava2D(points.getYValue(series, item), dataArea, plot.getRangeAxisEdge());
        double low = rangeAxis.valueToJava2D(points.getStartYValue(series, item), dataArea, plot.getRangeAxisEdge());
        double high = rangeAxis.valueToJava2D(points.getEndYValue(series, item), dataArea, plot.getRangeAxisEdge());
        RoomStyle style = styles.get(series);
        boolean turned = plot.getOrientation() == PlotOrientation.HORIZONTAL;
        if (high != low) {
            drawBar(g2, style, turned ? new Line2D.Double(low, x, high, x) : new Line2D.Double(x, low, x, high));
        }
        Shape outline = turned ? style.at(y, x, radiusPx) : style.at(x, y, radiusPx);
        drawMark(g2, style, new PointMark(outline, room(points, series), words.of(points, series, item)));
    }

    private static void drawBar(Graphics2D g2, RoomStyle style, Line2D bar) {
        Color ink = style.ink();
        g2.setPaint(new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 150));
        g2.setStroke(new BasicStroke(1f));
        g2.draw(bar);
    }

    private static void drawMark(Graphics2D g2, RoomStyle style, PointMark mark) {
        g2.setPaint(style.filled() ? style.ink() : INSIDE);
        g2.fill(mark);
        g2.setPaint(style.ink());
        g2.setStroke(new BasicStroke(style.filled() ? 0.6f : 1.6f));
        g2.draw(mark.outline());
    }

    private static String room(YIntervalSeriesCollection points, int series) {
        return points.getSeriesKey(series).toString();
    }
}
