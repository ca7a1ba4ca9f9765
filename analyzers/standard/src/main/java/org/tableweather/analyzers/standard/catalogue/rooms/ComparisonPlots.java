package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;

/** All rooms by their departures, the chances of this room's places, and what a next session would tell. */
final class ComparisonPlots {

    private static final double Z = Coverage.DEFAULT.halfWidth(Double.POSITIVE_INFINITY);

    private final Response response;
    private final NestedFit fit;
    private final int room;
    private final List<RoomDeparture> departures;
    private final NextSessions next;

    ComparisonPlots(Response response, NestedFit fit, int room, List<RoomDeparture> departures, NextSessions next) {
        this.response = response;
        this.fit = fit;
        this.room = room;
        this.departures = departures;
        this.next = next;
    }

    List<Plot> all() {
        List<Plot> plots = new ArrayList<>();
        for (int effect = 0; effect < departures.size(); effect++) {
            plots.add(rooms(effect));
        }
        List<Series> places = departures.stream()
                .filter(one -> one.places().isPresent())
                .map(ComparisonPlots::places)
                .toList();
        if (!places.isEmpty()) {
            plots.add(
                    new Plot("places", "Which place this room may take", "place, 1 for the largest", "chance", places));
        }
        if (!next.best.isEmpty()) {
            plots.add(next());
        }
        return plots;
    }

    private Plot rooms(int effect) {
        RoomDeparture here = departures.get(effect);
        boolean level = here.name().equals(RoomDeparture.LEVEL);
        List<Integer> sorted = IntStream.range(0, fit.rooms().size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        (Integer other) -> -fit.rooms().get(other).effects()[effect]))
                .toList();
        Interval interval = here.interval();
        List<Double> ends = List.of(1.0, (double) sorted.size());
        List<Series> series = new ArrayList<>();
        series.add(new Series(
                "this room, 95 %",
                Mark.BAND,
                ends,
                Collections.nCopies(2, here.value()),
                Collections.nCopies(2, interval.lower()),
                Collections.nCopies(2, interval.upper())));
        series.add(new Series("average room", Mark.LINE, ends, Collections.nCopies(2, 0.0), List.of(), List.of()));
        for (int place = 0; place < sorted.size(); place++) {
            NestedFit.RoomEffect other = fit.rooms().get(sorted.get(place));
            double value = other.effects()[effect];
            double bar = Z * Math.sqrt(other.variance()[effect][effect]);
            series.add(new Series(
                    other.key(),
                    Mark.POINTS,
                    List.of(place + 1.0),
                    List.of(value),
                    List.of(value - bar),
                    List.of(value + bar)));
        }
        return new Plot(
                level ? "room-levels" : "room-slopes",
                "What each room adds to the average room, beside "
                        + fit.rooms().get(room).key(),
                "place, 1 for the largest",
                (level ? "level" : "slope") + " of the " + response.noun + ", departure, "
                        + (level ? response.unit : response.per("per 10 %RH")),
                series);
    }

    private static Series places(RoomDeparture one) {
        List<Double> chance = one.places().orElseThrow().chance();
        List<Double> place = IntStream.rangeClosed(1, chance.size())
                .mapToObj(at -> (double) at)
                .toList();
        String name = one.name().equals(RoomDeparture.LEVEL) ? "level" : "slope";
        return new Series(name, Mark.LINE, place, chance, List.of(), List.of());
    }

    private Plot next() {
        return new Plot(
                "next-session",
                "What one more session of " + next.trials + " trials in this room would tell",
                "relative humidity of the session, %",
                "standard error of this room's "
                        + (next.forSlope ? "slope, " + response.per("per 10 %RH") : "level, " + response.unit),
                List.of(
                        new Series(
                                "now",
                                Mark.LINE,
                                List.of(next.reachable.get(0), next.reachable.get(next.reachable.size() - 1)),
                                Collections.nCopies(2, next.now),
                                List.of(),
                                List.of()),
                        new Series(
                                "after one more session",
                                Mark.LINE,
                                next.reachable,
                                next.afterOne,
                                List.of(),
                                List.of())));
    }
}
