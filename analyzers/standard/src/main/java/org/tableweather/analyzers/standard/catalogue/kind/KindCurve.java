package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * The mean of an outcome over humidity, at 21 °C and at the pooled mean of the other covariates; both bands are 95 % at each
 * humidity by itself, {@code fit ± t s}, t on Satterthwaite's degrees of freedom, which count as 1 when they are below.
 *
 * @source Satterthwaite1946
 */
final class KindCurve {

    static final double COVERAGE = 0.95;

    private final KindPool pool;
    private final KindQuestion question;
    private final NestedFit fit;
    private final double[] covariateMeans;
    private final boolean oneRoom;
    final double fromPct;
    final double toPct;

    KindCurve(KindPool pool, KindQuestion question, NestedFit fit) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        oneRoom = pool.rooms.size() == 1;
        covariateMeans = covariateMeans();
        double lowest = pool.lowestPct();
        double highest = pool.highestPct();
        double step = step(highest - lowest);
        boolean round = Math.ceil(lowest / step) < Math.floor(highest / step);
        fromPct = question.fromPct().orElse(round ? Math.ceil(lowest / step) * step : lowest);
        toPct = question.toPct().orElse(round ? Math.floor(highest / step) * step : highest);
        if (!(fromPct <= toPct)) {
            throw new IllegalArgumentException("the curve would begin at " + Figures.plain(fromPct) + " and end at "
                    + Figures.plain(toPct) + " %RH: set both " + KindQuestion.FROM + " and " + KindQuestion.TO);
        }
    }

    private double[] covariateMeans() {
        Moments total = pool.total();
        double[] means = new double[question.asked().size()];
        for (int i = 0; i < means.length; i++) {
            means[i] = total.mean(question.climate().size() + i);
        }
        return means;
    }

    private static double step(double range) {
        if (range <= 15) {
            return 1;
        }
        return range <= 45 ? 2.5 : 5;
    }

    private List<Double> grid() {
        double step = step(toPct - fromPct);
        List<Double> grid = new ArrayList<>();
        grid.add(fromPct);
        for (long i = (long) Math.floor(fromPct / step) + 1; i * step < toPct; i++) {
            grid.add(i * step);
        }
        grid.add(toPct);
        return grid;
    }

    private double[] row(double rhPct) {
        double h = (rhPct - 50) / 10;
        int climate = question.climate().size();
        double[] row = new double[1 + climate + covariateMeans.length];
        row[0] = 1;
        row[1] = h;
        if (question.bent()) {
            row[2] = h * h;
        }
        System.arraycopy(covariateMeans, 0, row, 1 + climate, covariateMeans.length);
        return row;
    }

    private double[] changeRow() {
        double[] change = row(toPct);
        double[] begin = row(fromPct);
        for (int i = 0; i < change.length; i++) {
            change[i] -= begin[i];
        }
        return change;
    }

    /** The change of the mean from the curve's beginning to its end. */
    Quantity change() {
        return fit.contrast(changeRow());
    }

    /** The same in a room not yet known. */
    Quantity changeInNewRoom() {
        return fit.inNewRoom(changeRow());
    }

    List<CurvePoint> points() {
        return grid().stream().map(this::point).toList();
    }

    private CurvePoint point(double rhPct) {
        double[] row = row(rhPct);
        Quantity mean = fit.contrast(row);
        double reach = reach(mean);
        double roomReach = reach(fit.inNewRoom(row));
        return new CurvePoint(
                rhPct,
                mean.value(),
                mean.value() - reach,
                mean.value() + reach,
                oneRoom ? null : mean.value() - roomReach,
                oneRoom ? null : mean.value() + roomReach);
    }

    /** Half the width of the 95 % interval. */
    static double reach(Quantity quantity) {
        return StudentT.halfWidth(COVERAGE, Math.max(1, quantity.df())) * quantity.standardError();
    }

    /** Bands, mean, and each room's session means as they are, unadjusted. */
    Plot plot(List<CurvePoint> points) {
        List<Double> x = points.stream().map(CurvePoint::rhPct).toList();
        List<Double> mean = points.stream().map(CurvePoint::mean).toList();
        List<Series> series = new ArrayList<>();
        if (!oneRoom) {
            series.add(new Series(
                    "a new room's true curve, 95 %",
                    Mark.BAND,
                    x,
                    mean,
                    points.stream().map(CurvePoint::newRoomLower).toList(),
                    points.stream().map(CurvePoint::newRoomUpper).toList()));
        }
        String whose = oneRoom ? "mean of this room" : "mean of all rooms";
        series.add(new Series(
                whose + ", 95 %",
                Mark.BAND,
                x,
                mean,
                points.stream().map(CurvePoint::lower).toList(),
                points.stream().map(CurvePoint::upper).toList()));
        series.add(new Series(whose, Mark.LINE, x, mean, List.of(), List.of()));
        pool.rooms.forEach(room -> series.add(roomPoints(room)));
        return new Plot(
                "curve",
                capital(pool.outcome.noun()) + " over humidity, shot " + pool.shot
                        + ": each point the plain mean of a session",
                "relative humidity, %",
                pool.outcome.axis(),
                series);
    }

    private static Series roomPoints(RoomSessions room) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (Moments session : room.sessions()) {
            x.add(50 + 10 * session.mean(0));
            y.add(session.mean(session.columns() - 1));
        }
        return new Series(room.key(), Mark.POINTS, x, y, List.of(), List.of());
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
