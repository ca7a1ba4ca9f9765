package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.data.Range;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;

/** Expected: a diamond along is as long as a diamond across, as on the table (WPA equipment specification). */
class EqualScalesTest {

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void drawADiamondAlongAsLongAsOneAcross(boolean phone) {
        ChartSize size = phone ? ChartSize.phone() : ChartSize.page();
        Series table = new Series(
                "playing area",
                Mark.LINE,
                List.of(0.0, 8.0, 8.0, 0.0, 0.0),
                List.of(0.0, 0.0, 4.0, 4.0, 0.0),
                List.of(),
                List.of());
        Plot plot = new Plot("table", "Ways", "diamonds along", "diamonds across", List.of(table));
        JFreeChart chart = PlotDrawing.chart(plot, "12 rooms", true, size);

        assertThat(EqualScales.areWanted(plot)).isTrue();
        EqualScales.apply(chart, size);

        Rectangle2D area = area(chart, size);
        Range along = chart.getXYPlot().getDomainAxis().getRange();
        Range across = chart.getXYPlot().getRangeAxis().getRange();
        assertThat(area.getWidth() / along.getLength() / (area.getHeight() / across.getLength()))
                .isEqualTo(1, within(0.01));
        assertThat(along.contains(0) && along.contains(8) && across.contains(0) && across.contains(4))
                .isTrue();
    }

    private static Rectangle2D area(JFreeChart chart, ChartSize size) {
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(
                new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics(),
                new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx()),
                info);
        return info.getPlotInfo().getDataArea();
    }
}
