package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.CurveRange;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialEffect;

/**
 * The chance to make the shot in an average room over humidity, %, at 21 °C; both bands are 95 % at each humidity by itself,
 * normal on the log odds.
 */
final class RateCurve {

    private static final double HALF_WIDTH = Coverage.DEFAULT.halfWidth(Double.POSITIVE_INFINITY);

    private final RateModel model;
    private final CurveRange range;
    final double fromPct;
    final double toPct;

    RateCurve(RateModel model) {
        this.model = model;
        range = CurveRange.of(
                model.pool.humidities().min().orElseThrow(),
                model.pool.humidities().max().orElseThrow(),
                model.question.range());
        fromPct = range.fromPct();
        toPct = range.toPct();
    }

    List<CurvePoint> points() {
        return range.grid().stream().map(this::point).toList();
    }

    private CurvePoint point(double rhPct) {
        BinomialEffect odds = model.fit.contrast(model.question.row(rhPct));
        double rooms = model.fit.clusterSd();
        double reach = HALF_WIDTH * Math.sqrt(odds.standardError() * odds.standardError() + rooms * rooms);
        return new CurvePoint(
                rhPct,
                pct(odds.value()),
                pct(odds.interval().lower()),
                pct(odds.interval().upper()),
                pct(odds.value() - reach),
                pct(odds.value() + reach));
    }

    private static double pct(double logOdds) {
        return 100 * RateModel.chance(logOdds);
    }

    /** The chance at this humidity in an average room, %. */
    double chancePct(double rhPct) {
        return pct(model.fit.contrast(model.question.row(rhPct)).value());
    }

    /** Change of the chance from the curve's beginning to its end, percentage points. */
    double changePct() {
        return chancePct(toPct) - chancePct(fromPct);
    }

    /** Standard error of the change, by its gradient: {@code dp = p (1 − p) dx}. */
    double changeErrorPct() {
        double[] end = model.question.row(toPct);
        double[] begin = model.question.row(fromPct);
        double p = chancePct(toPct) / 100;
        double q = chancePct(fromPct) / 100;
        for (int i = 0; i < end.length; i++) {
            end[i] = 100 * (p * (1 - p) * end[i] - q * (1 - q) * begin[i]);
        }
        return model.fit.contrast(end).standardError();
    }

    /** Half the width of the change's 95 % interval. */
    double changeReachPct() {
        return HALF_WIDTH * changeErrorPct();
    }

    /** Bands, chance, and each session's share as it is, unadjusted. */
    Plot plot(List<CurvePoint> points) {
        List<Double> x = points.stream().map(CurvePoint::rhPct).toList();
        List<Double> mean = points.stream().map(CurvePoint::mean).toList();
        List<Series> series = new ArrayList<>();
        series.add(new Series(
                "a new room's true chance, 95 %",
                Mark.BAND,
                x,
                mean,
                points.stream().map(CurvePoint::newRoomLower).toList(),
                points.stream().map(CurvePoint::newRoomUpper).toList()));
        series.add(new Series(
                "chance in an average room, 95 %",
                Mark.BAND,
                x,
                mean,
                points.stream().map(CurvePoint::lower).toList(),
                points.stream().map(CurvePoint::upper).toList()));
        series.add(new Series("chance in an average room", Mark.LINE, x, mean, List.of(), List.of()));
        byRoom().forEach((room, sessions) -> series.add(roomPoints(room, sessions)));
        return new Plot(
                "curve",
                "How often shot " + model.pool.shot + " goes in over humidity: each point a session",
                "relative humidity, %",
                "attempts that went in, %",
                series);
    }

    private Map<String, List<RatePool.Counted>> byRoom() {
        Map<String, List<RatePool.Counted>> rooms = new LinkedHashMap<>();
        model.pool.sessions.forEach(session ->
                rooms.computeIfAbsent(session.room(), room -> new ArrayList<>()).add(session));
        return rooms;
    }

    private static Series roomPoints(String room, List<RatePool.Counted> sessions) {
        return new Series(
                room,
                Mark.POINTS,
                sessions.stream().map(RatePool.Counted::rhPct).toList(),
                sessions.stream()
                        .map(session -> 100.0 * session.made() / session.tried())
                        .toList(),
                List.of(),
                List.of());
    }
}
