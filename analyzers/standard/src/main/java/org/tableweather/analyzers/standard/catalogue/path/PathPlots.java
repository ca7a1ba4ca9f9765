package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.record.Shot;

/** Both ways on the table, the drift over humidity, and which rail makes it. */
final class PathPlots {

    private static final int POINTS = 31;
    private static final double COVERAGE = 0.95;
    private static final int STEPS_A_LEG = 8;

    private final PathResult result;
    private final PathQuestion question;

    PathPlots(PathResult result) {
        this.result = result;
        question = result.asked.question;
    }

    List<Plot> list() {
        return List.of(table(), drift(), rails());
    }

    private Plot table() {
        List<Series> series = new ArrayList<>();
        series.add(way(question.from().words(), result.first));
        series.add(way(question.to().words(), result.second));
        series.add(new Series(
                "playing area, nose to nose",
                Mark.LINE,
                List.of(0.0, 8.0, 8.0, 0.0, 0.0),
                List.of(0.0, 0.0, 4.0, 4.0, 0.0),
                List.of(),
                List.of()));
        return new Plot(
                "table",
                "The way of " + result.model.pattern.name() + " in both climates, to scale",
                "diamonds along, from the head rail",
                "diamonds across, from the near rail",
                series);
    }

    private Series way(String name, Trace trace) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        BallPath path = trace.path();
        add(path.start().place(), x, y);
        double startS = 0;
        BallState start = path.start();
        for (PathEvent event : path.events()) {
            curve(start, event, event.timeS() - startS, x, y);
            startS = event.timeS();
            start = event.after();
        }
        return new Series(name, Mark.LINE, x, y, List.of(), List.of());
    }

    /** Between two events the ball's acceleration is constant: a parabola through both, with the first's velocity. */
    private void curve(BallState from, PathEvent to, double seconds, List<Double> x, List<Double> y) {
        double bendX = to.before().xM() - from.xM() - from.vxMps() * seconds;
        double bendY = to.before().yM() - from.yM() - from.vyMps() * seconds;
        for (int i = 1; i <= STEPS_A_LEG; i++) {
            double share = i / (double) STEPS_A_LEG;
            double run = seconds * share;
            add(
                    new TablePoint(
                            from.xM() + from.vxMps() * run + bendX * share * share,
                            from.yM() + from.vyMps() * run + bendY * share * share),
                    x,
                    y);
        }
    }

    private void add(TablePoint place, List<Double> x, List<Double> y) {
        Shot.Position at = result.model.pattern.table().diamonds(place);
        x.add(at.xDia());
        y.add(at.yDia());
    }

    private Plot drift() {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        List<Double> lower = new ArrayList<>();
        List<Double> upper = new ArrayList<>();
        double low = Math.min(
                result.asked.rail.lowestPct(),
                Math.min(question.from().rhPct(), question.to().rhPct()));
        double high = Math.max(
                result.asked.rail.highestPct(),
                Math.max(question.from().rhPct(), question.to().rhPct()));
        double t = StudentT.halfWidth(COVERAGE, result.model.df());
        for (int i = 0; i < POINTS; i++) {
            double rhPct = low + (high - low) * i / (POINTS - 1);
            ModelClimate at =
                    result.asked.climate(new AskedClimate(question.to().tempC(), rhPct));
            double drift = result.model.trace(at).landingDia() - result.first.landingDia();
            double reach = Double.isNaN(at.x())
                    ? Double.NaN
                    : t * LandingSpread.expected(result.spread.drift(result.from, at, 0));
            if (!Double.isNaN(drift + reach)) {
                x.add(rhPct);
                y.add(drift);
                lower.add(drift - reach);
                upper.add(drift + reach);
            }
        }
        String room = result.model.inOwnRoom() ? "this room" : "a new room";
        return new Plot(
                "drift",
                "Drift from " + question.from().words() + ", at "
                        + Figures.plain(question.to().tempC()) + " °C",
                "relative humidity (%)",
                "drift of the landing (diamonds, positive long)",
                List.of(
                        new Series("95 % band in " + room, Mark.BAND, x, y, lower, upper),
                        new Series("expected", Mark.LINE, x, y, List.of(), List.of())));
    }

    private Plot rails() {
        List<Series> series = new ArrayList<>();
        for (int i = 0; i < result.byRail.length; i++) {
            if (!Double.isNaN(result.byRail[i])) {
                series.add(new Series(
                        (i + 1) + ", " + result.model.pattern.rails().get(i).schemaName() + " rail",
                        Mark.POINTS,
                        List.of(series.size() + 1.0),
                        List.of(result.byRail[i]),
                        List.of(),
                        List.of()));
            }
        }
        return new Plot(
                "rails",
                "Which contact makes the drift",
                "contact",
                "share of the drift (diamonds, positive long)",
                series);
    }
}
