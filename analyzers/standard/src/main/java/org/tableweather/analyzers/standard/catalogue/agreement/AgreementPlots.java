package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency.Statistic;

/** Mandel's h and k of each room, with their bounds. */
final class AgreementPlots {

    private static final String ROOM = "room, by its key";

    private final Consistency consistency;
    private final List<Double> ends;

    AgreementPlots(Consistency consistency) {
        this.consistency = consistency;
        ends = List.of(1.0, (double) consistency.laboratories().size());
    }

    List<Plot> all() {
        OptionalDouble criticalK = consistency.criticalK(AgreementFacts.ALPHA);
        return criticalK.isPresent() ? List.of(h(), k(criticalK.getAsDouble())) : List.of(h());
    }

    private Plot h() {
        double critical = consistency.criticalH(AgreementFacts.ALPHA);
        List<Series> series = new ArrayList<>();
        series.add(bound("upper bound, 0.5 %", critical));
        series.add(bound("lower bound, 0.5 %", -critical));
        for (int room = 0; room < consistency.laboratories().size(); room++) {
            Statistic one = consistency.laboratories().get(room);
            series.add(point(one.label(), room, one.h()));
        }
        return new Plot("mandel-h", "How far each room's mean lies from the others", ROOM, "Mandel's h", series);
    }

    private Plot k(double critical) {
        List<Series> series = new ArrayList<>();
        series.add(bound("bound, 0.5 %", critical));
        for (int room = 0; room < consistency.laboratories().size(); room++) {
            Statistic one = consistency.laboratories().get(room);
            if (one.k().isPresent()) {
                series.add(point(one.label(), room, one.k().getAsDouble()));
            }
        }
        return new Plot(
                "mandel-k", "How much each room's trials scatter beside the others'", ROOM, "Mandel's k", series);
    }

    private Series bound(String name, double value) {
        return new Series(name, Mark.LINE, ends, Collections.nCopies(2, value), List.of(), List.of());
    }

    private static Series point(String name, int room, double value) {
        return new Series(name, Mark.POINTS, List.of(room + 1.0), List.of(value), List.of(), List.of());
    }
}
