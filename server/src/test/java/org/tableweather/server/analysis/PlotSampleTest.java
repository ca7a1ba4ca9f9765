package org.tableweather.server.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Plot;

class PlotSampleTest {
    private static final Plot.Series MEAN =
            new Plot.Series("mean", Plot.Mark.LINE, List.of(30.0, 70.0), List.of(31.0, 28.0), List.of(), List.of());

    private static Plot plot(int rooms, int pointsEach) {
        List<Plot.Series> series = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            List<Double> at =
                    IntStream.range(0, pointsEach).mapToObj(i -> (double) i).toList();
            series.add(new Plot.Series("hall/" + room, Plot.Mark.POINTS, at, at, List.of(), List.of()));
        }
        series.add(MEAN);
        return new Plot("curve", "Curve", "x", "y", series);
    }

    private static List<String> names(PlotSample sample) {
        return sample.plot().series().stream().map(Plot.Series::name).toList();
    }

    @Test
    void aPlotThatAPageCanCarryIsDrawnWhole() {
        Plot whole = plot(PlotSample.MOST, 5);
        assertThat(PlotSample.of(whole).plot()).isSameAs(whole);
        assertThat(PlotSample.of(whole).note()).isEmpty();
    }

    @Test
    void ofManyRoomsEverySoManyAreDrawnAndAllLines() {
        PlotSample sample = PlotSample.of(plot(10_000, 5));

        assertThat(names(sample)).hasSizeLessThanOrEqualTo(PlotSample.MOST + 1).contains("hall/0", "hall/34", "mean");
        assertThat(names(sample)).doesNotContain("hall/1", "hall/33");
        assertThat(sample.note()).contains("295 of 10,000 rooms").contains("every 34th");
    }

    @Test
    void ofALongListTheFirstAreDrawn() {
        PlotSample sample = PlotSample.of(plot(1000, 1));

        assertThat(names(sample)).startsWith("hall/0", "hall/1", "hall/2").endsWith("hall/299", "mean");
        assertThat(sample.note()).contains("300 of 1,000 rooms").contains("the first of the list");
    }
}
