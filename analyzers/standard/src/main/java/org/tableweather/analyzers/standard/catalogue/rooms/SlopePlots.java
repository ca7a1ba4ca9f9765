package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.rooms.SlopeStage.RoomSlope;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.meta.MetaAnalysis.Omission;
import org.tableweather.analyzers.standard.statistics.meta.MetaFit;

/** Forest, funnel, and the mean without each room. */
final class SlopePlots {

    private static final double Z = Coverage.DEFAULT.halfWidth(Double.POSITIVE_INFINITY);

    private final String slopeAxis;
    private final SlopeStage stage;
    private final MetaFit fit;
    private final Omissions omissions;

    SlopePlots(Response response, SlopeStage stage, MetaFit fit, Omissions omissions) {
        slopeAxis = "slope of the " + response.noun + ", " + response.per("per 10 %RH");
        this.stage = stage;
        this.fit = fit;
        this.omissions = omissions;
    }

    List<Plot> all() {
        List<Plot> plots = new ArrayList<>(List.of(forest(), funnel()));
        if (!omissions.list().isEmpty()) {
            plots.add(leaveOneOut());
        }
        return plots;
    }

    private Plot forest() {
        List<RoomSlope> sorted = stage.slopes.stream()
                .sorted(Comparator.comparingDouble(RoomSlope::slope))
                .toList();
        List<Series> series = new ArrayList<>();
        fit.prediction().ifPresent(room -> series.add(level("a new room, 95 %", sorted.size(), room)));
        series.add(level("mean of rooms, 95 %", sorted.size(), fit.mean().interval()));
        for (int i = 0; i < sorted.size(); i++) {
            RoomSlope one = sorted.get(i);
            double bar = Z * Math.sqrt(one.variance());
            series.add(point(one.room().key(), i + 1, one.slope(), one.slope() - bar, one.slope() + bar));
        }
        return new Plot(
                "forest", "The slope of each room with its 95 % interval", "room, by its slope", slopeAxis, series);
    }

    private Plot funnel() {
        double most = Math.sqrt(
                stage.slopes.stream().mapToDouble(RoomSlope::variance).max().orElse(0));
        double mean = fit.mean().value();
        List<Series> series = new ArrayList<>();
        series.add(line("mean of rooms", List.of(mean, mean), most));
        series.add(line("lower 95 % without differences", List.of(mean, mean - Z * most), most));
        series.add(line("upper 95 % without differences", List.of(mean, mean + Z * most), most));
        for (RoomSlope one : stage.slopes) {
            series.add(new Series(
                    one.room().key(),
                    Mark.POINTS,
                    List.of(one.slope()),
                    List.of(Math.sqrt(one.variance())),
                    List.of(),
                    List.of()));
        }
        return new Plot(
                "funnel",
                "Slopes against their standard errors: uneven when loosely measured rooms tell another story",
                slopeAxis,
                "standard error of the slope",
                series);
    }

    private Plot leaveOneOut() {
        List<Series> series = new ArrayList<>();
        series.add(level("all rooms, 95 %", omissions.list().size(), fit.mean().interval()));
        for (int i = 0; i < omissions.list().size(); i++) {
            Omission one = omissions.list().get(i);
            Interval interval = one.without().mean().interval();
            series.add(point(one.label(), i + 1, one.without().mean().value(), interval.lower(), interval.upper()));
        }
        return new Plot(
                "leave-one-out", "The mean slope without each room", "room left out, by its key", slopeAxis, series);
    }

    private Series level(String name, int rooms, Interval interval) {
        return new Series(
                name,
                Mark.BAND,
                List.of(1.0, (double) rooms),
                Collections.nCopies(2, fit.mean().value()),
                Collections.nCopies(2, interval.lower()),
                Collections.nCopies(2, interval.upper()));
    }

    private static Series point(String name, double x, double y, double lower, double upper) {
        return new Series(name, Mark.POINTS, List.of(x), List.of(y), List.of(lower), List.of(upper));
    }

    private static Series line(String name, List<Double> slopes, double most) {
        return new Series(name, Mark.LINE, slopes, List.of(0.0, most), List.of(), List.of());
    }
}
