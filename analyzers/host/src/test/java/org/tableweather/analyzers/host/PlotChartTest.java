package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;

class PlotChartTest {

    private static final AnalysisRun RUN = DrawnRuns.withRooms(12, true);

    /** A slope for each of some rooms, and the band of their mean. */
    private static Plot forest(int rooms) {
        List<Series> series = new ArrayList<>();
        series.add(new Series(
                "mean of rooms, 95 %",
                Mark.BAND,
                List.of(1.0, (double) rooms),
                List.of(-0.8, -0.8),
                List.of(-1.0, -1.0),
                List.of(-0.6, -0.6)));
        for (int room = 1; room <= rooms; room++) {
            double slope = -1.2 + 0.8 * room / rooms;
            series.add(new Series(
                    "club/room-" + room,
                    Mark.POINTS,
                    List.of((double) room),
                    List.of(slope),
                    List.of(slope - 0.3),
                    List.of(slope + 0.3)));
        }
        return new Plot("forest", "Slopes", "room", "slope, deg per 10 %RH", series);
    }

    private static Series line(String name, double from, double to) {
        return new Series(name, Mark.LINE, List.of(0.0, 1.0), List.of(from, to), List.of(), List.of());
    }

    @Test
    void namesTheRowsWhereAPlaceMeansNothing() {
        String svg = PlotChart.svg(RUN, forest(5), ChartSize.page());

        for (int room = 1; room <= 5; room++) {
            assertThat(svg).contains(">room-" + room + "<");
        }
        assertThat(svg)
                .contains("room-5; slope, deg per 10 %RH: -0.400 (-0.700 to -0.100)")
                .contains(">mean of rooms, 95 %<")
                .doesNotContain("room: 5");
        assertThat(svg.split("class=\"room-point\"", -1)).hasSize(1 + 5);
    }

    @Test
    void takesMorePaperForMoreRows() throws Exception {
        int few = image(forest(5), ChartSize.phone()).getHeight();
        int many = image(forest(50), ChartSize.phone()).getHeight();

        assertThat(few).isEqualTo(2 * ChartSize.phone().heightPx());
        assertThat(many).isGreaterThan(2 * 50 * ChartSize.phone().fontPx());
    }

    @Test
    void numbersMoreRowsThanCanBeFollowed() {
        assertThat(NamedRows.of(forest(60))).isPresent();
        assertThat(NamedRows.of(forest(61))).isEmpty();
        assertThat(PlotChart.svg(RUN, forest(61), ChartSize.page()))
                .contains(">61 rooms<")
                .doesNotContain(">room-7<");
    }

    @Test
    void takesNoCurveForRows() {
        assertThat(NamedRows.of(CurveChart.curve(RUN))).isEmpty();
        Plot lines = new Plot("p", "t", "x", "y", List.of(line("a", 0, 1)));
        assertThat(NamedRows.of(lines)).isEmpty();
    }

    @Test
    void tellsLinesApartByTheirDashes() {
        Plot plot = new Plot(
                "funnel", "t", "x", "y", List.of(line("middle", 0, 0), line("lower", 0, -1), line("upper", 0, 1)));
        String svg = PlotChart.svg(RUN, plot, ChartSize.page());

        assertThat(svg).contains(">middle<", ">lower<", ">upper<");
        assertThat(svg.split("stroke-dasharray=\"[0-9]", -1).length).isGreaterThan(2);
        assertThat(LineInk.of(0).dashes()).isEmpty();
        assertThat(LineInk.of(1).dashes()).isNotEqualTo(LineInk.of(2).dashes());
        assertThat(LineInk.of(1).ink()).isNotEqualTo(LineInk.of(2).ink());
    }

    @Test
    void givesABandTheInkOfItsLine() throws Exception {
        Series band = new Series(
                "felt, 95 %", Mark.BAND, List.of(0.0, 1.0), List.of(2.0, 2.0), List.of(1.0, 1.0), List.of(3.0, 3.0));
        Plot plot = new Plot("subgroups", "t", "x", "y", List.of(band, line("wool", 8, 8), line("felt", 2, 2)));
        BufferedImage image = image(plot, ChartSize.page());

        Color ink = LineInk.of(1).band();
        double share = ink.getAlpha() / 255.0;
        int expected = (int) Math.round(255 + share * (ink.getBlue() - 255));
        assertThat(blues(image)).anyMatch(blue -> Math.abs(blue - expected) <= 1);
    }

    private static List<Integer> blues(BufferedImage image) {
        List<Integer> blues = new ArrayList<>();
        for (int y = 0; y < image.getHeight(); y += 10) {
            blues.add(new Color(image.getRGB(image.getWidth() / 2 + 7, y)).getBlue());
        }
        return blues;
    }

    @Test
    void putsALabelThatDoesNotFitOnALineOfItsOwn() {
        String label = "slope of the final rebound angle off the last rail, deg from the normal per 10 %RH";
        Plot plot = new Plot("p", "t", label, label, List.of(line("a", 0, 1)));

        assertThat(PlotChart.svg(RUN, plot, ChartSize.phone()))
                .contains(">\u2191 slope")
                .contains(">\u2192 slope");
        Plot fits = new Plot("p", "t", "x label", "y label", List.of(line("a", 0, 1)));
        assertThat(PlotChart.svg(RUN, fits, ChartSize.phone()))
                .contains(">x label<", ">y label<")
                .doesNotContain("\u2191");
    }

    @Test
    void tellsThePlotToThoseWhoDoNotSeeIt() {
        assertThat(PlotWords.of(forest(2)))
                .isEqualTo("Across: room. Up: slope, deg per 10 %RH."
                        + " Band mean of rooms, 95 %: from (1.00, -1.00 to -0.600) to (2.00, -1.00 to -0.600)."
                        + " Points: room-1 -0.800 (-1.10 to -0.500); room-2 -0.400 (-0.700 to -0.100).");
        assertThat(PlotWords.of(forest(13))).endsWith("Points: 13 in 13 series.");
        assertThat(PlotWords.of(new Plot("p", "t", "x", "y", List.of(line("a", 0, 12)))))
                .isEqualTo("Across: x. Up: y. Line a: from (0.0, 0.0) to (1.00, 12.0).");
        assertThat(PlotChart.svg(RUN, forest(2), ChartSize.page()))
                .contains("<desc")
                .contains("room-2 -0.400 (-0.700 to -0.100)");
    }

    @Test
    void sharesNoIdWithAnotherPlotOfTheSameAnswer() {
        Plot other = new Plot("other", "t", "x", "y", List.of(line("a", 0, 1)));
        String first = PlotChart.svg(RUN, forest(3), ChartSize.page());
        String second = PlotChart.svg(RUN, other, ChartSize.page());

        assertThat(prefix(first)).isNotEqualTo(prefix(second));
        assertThat(PlotChart.svg(RUN, forest(3), ChartSize.page())).isEqualTo(first);
    }

    private static String prefix(String svg) {
        int at = svg.indexOf("aria-labelledby=\"");
        return svg.substring(at, svg.indexOf("title", at));
    }

    @Test
    void saysWhyThereIsNothingToDraw() {
        assertThat(PlotChart.plots(RUN)).hasSize(1);
        assertThatThrownBy(() -> PlotChart.plots(DrawnRuns.declined()))
                .isInstanceOf(ChartUnavailable.class)
                .hasMessageContaining("nothing to draw")
                .hasMessageContaining("1 session < 3");
    }

    private static BufferedImage image(Plot plot, ChartSize size) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(PlotChart.png(RUN, plot, size)));
    }
}
