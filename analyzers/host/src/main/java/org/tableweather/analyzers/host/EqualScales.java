package org.tableweather.analyzers.host;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.tableweather.analyzers.spi.Plot;

/** One scale for both axes, so that a table is seen as it is: the axis that has room to spare is drawn longer on either side. */
final class EqualScales {
    private static final String TABLE = "table";
    /** Longer axes may have wider labels, which take from the other. */
    private static final int ROUNDS = 2;

    private EqualScales() {}

    /** Whether a plot is a table seen from above. */
    static boolean areWanted(Plot plot) {
        return plot.id().equals(TABLE);
    }

    static void apply(JFreeChart chart, ChartSize size) {
        XYPlot plot = chart.getXYPlot();
        for (int i = 0; i < ROUNDS; i++) {
            Rectangle2D area = drawn(chart, size);
            ValueAxis across = plot.getDomainAxis();
            ValueAxis up = plot.getRangeAxis();
            double scale = Math.min(
                    area.getWidth() / across.getRange().getLength(),
                    area.getHeight() / up.getRange().getLength());
            lengthen(across, area.getWidth() / scale);
            lengthen(up, area.getHeight() / scale);
        }
    }

    private static void lengthen(ValueAxis axis, double length) {
        Range range = axis.getRange();
        double middle = range.getCentralValue();
        axis.setRange(new Range(middle - length / 2, middle + length / 2));
    }

    /** Where the data come to lie. */
    private static Rectangle2D drawn(JFreeChart chart, ChartSize size) {
        ChartRenderingInfo info = new ChartRenderingInfo();
        BufferedImage image = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
        Graphics2D paper = image.createGraphics();
        chart.draw(paper, new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx()), info);
        paper.dispose();
        return info.getPlotInfo().getDataArea();
    }
}
