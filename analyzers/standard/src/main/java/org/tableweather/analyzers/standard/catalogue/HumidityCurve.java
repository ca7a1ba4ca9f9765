package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * The mean of the response over humidity, at 21 °C and at the pooled mean of the other covariates. Points of the curve are
 * named by relative humidity at 21 °C whatever the measure; the plot is drawn over the measure itself.
 *
 * <p>Both bands are 95 % at each humidity by itself, {@code fit ± t s}. The mean band has {@code s² = x'Cx} and t on
 * Satterthwaite's degrees of freedom of it. The band of a new room's true curve has {@code s² = x'Cx + z'Σz} and t on
 * Satterthwaite's degrees of freedom of that sum, at least half of rooms less 2: few while the room variances are hardly
 * known. With those of the mean it would cover 86 to 93 % in place of 95 % in designs of 8 to 20 rooms
 * ({@code RejectionStudyTest}); how often it does is in {@code CALIBRATION.md}. Degrees of freedom below 1 count as 1.
 *
 * @source Satterthwaite1946
 */
final class HumidityCurve {

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final NestedFit fit;
    private final double[] covariateMeans;
    private final boolean oneRoom;
    final double fromPct;
    final double toPct;

    HumidityCurve(HumidityPool pool, HumidityQuestion question, NestedFit fit) {
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
        requireOrder();
    }

    private void requireOrder() {
        if (!(fromPct <= toPct)) {
            throw new IllegalArgumentException("the curve would begin at " + Figures.plain(fromPct) + " and end at "
                    + Figures.plain(toPct) + " %RH: set both " + HumidityQuestion.FROM + " and " + HumidityQuestion.TO);
        }
    }

    private double[] covariateMeans() {
        double[] means = new double[question.asked().size()];
        if (means.length == 0) {
            return means;
        }
        Moments total = pool.total();
        for (int i = 0; i < means.length; i++) {
            means[i] = total.mean(question.columns().firstAsked() - 1 + i);
        }
        return means;
    }

    private static double step(double range) {
        if (range <= 15) {
            return 1;
        }
        return range <= 45 ? 2.5 : 5;
    }

    /** Its ends in the measure's own unit. */
    String rangeInUnits() {
        return Figures.fixed(abscissa(x(fromPct)), 1) + " to " + Figures.fixed(abscissa(x(toPct)), 1) + " "
                + question.measure().unit;
    }

    /** Its ends and the round humidities between. */
    List<Double> grid() {
        double step = step(toPct - fromPct);
        List<Double> grid = new ArrayList<>();
        grid.add(fromPct);
        for (long i = (long) Math.floor(fromPct / step) + 1; i * step < toPct; i++) {
            grid.add(i * step);
        }
        grid.add(toPct);
        return grid;
    }

    private double x(double rhPct) {
        return question.measure().atStandard(rhPct, pool.typical);
    }

    /** Abscissa of the plot, in the measure's own unit. */
    private double abscissa(double x) {
        HumidityMeasure measure = question.measure();
        return measure.origin + measure.step * x;
    }

    /** Where a point of the curve is drawn. */
    double abscissaOf(double rhPct) {
        return question.measure() == HumidityMeasure.RELATIVE ? rhPct : abscissa(x(rhPct));
    }

    /** The row of the model at a humidity. */
    double[] row(double rhPct) {
        return question.columns().row(x(rhPct), covariateMeans);
    }

    /** The row of the change from the curve's beginning to its end. */
    double[] changeRow() {
        double[] change = row(toPct);
        double[] begin = row(fromPct);
        for (int i = 0; i < change.length; i++) {
            change[i] -= begin[i];
        }
        return change;
    }

    List<CurvePoint> points() {
        return grid().stream().map(this::point).toList();
    }

    private CurvePoint point(double rhPct) {
        double[] row = row(rhPct);
        NestedFit.Quantity mean = fit.contrast(row);
        double reach = HumidityFigures.reach(mean);
        NestedFit.Quantity room = fit.inNewRoom(row);
        double roomReach = HumidityFigures.reach(room);
        return new CurvePoint(
                rhPct,
                mean.value(),
                mean.value() - reach,
                mean.value() + reach,
                oneRoom ? null : mean.value() - roomReach,
                oneRoom ? null : mean.value() + roomReach);
    }

    /** Bands, mean, and each room's session means as they are, unadjusted. */
    Plot plot(List<CurvePoint> points) {
        List<Double> x = points.stream().map(point -> abscissaOf(point.rhPct())).toList();
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
                capital(question.response().noun) + " over " + title() + ", shot " + pool.shot
                        + ": each point the plain mean of a session",
                axis(),
                question.response().axis(),
                series);
    }

    private String title() {
        return question.measure() == HumidityMeasure.RELATIVE ? "humidity" : question.measure().noun;
    }

    /** Label of the abscissa. */
    String axis() {
        HumidityMeasure measure = question.measure();
        return measure.noun + ", " + (measure.unit.equals("%RH") ? "%" : measure.unit);
    }

    private Series roomPoints(RoomSessions room) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (Moments session : room.sessions()) {
            x.add(abscissa(session.mean(0)));
            y.add(session.mean(session.columns() - 1));
        }
        return new Series(room.key(), Mark.POINTS, x, y, List.of(), List.of());
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
