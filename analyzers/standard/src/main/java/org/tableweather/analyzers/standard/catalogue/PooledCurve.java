package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * The mean of a response over humidity.
 *
 * <p>Both bands are 95 % at each humidity by itself, {@code fit ± t s}. The mean band has {@code s² = x'Cx} and t on
 * Satterthwaite's degrees of freedom of it. The band of a new room's true curve has {@code s² = x'Cx + z'Σz} and t on
 * Satterthwaite's degrees of freedom of that sum, at least half of rooms less 2: few while the room variances are hardly
 * known. With those of the mean it would cover 86 to 93 % in place of 95 % in designs of 8 to 20 rooms
 * ({@code RejectionStudyTest}); how often it does is in {@code CALIBRATION.md}. Degrees of freedom below 1 count as 1.
 *
 * @source Satterthwaite1946
 */
public final class PooledCurve {

    private final NestedFit fit;
    private final List<RoomSessions> rooms;
    private final CurveRange range;
    private final DoubleFunction<double[]> row;
    private final boolean oneRoom;

    /**
     * A curve.
     *
     * @param fit of these rooms
     * @param rooms humidity in their first column, the response in their last
     * @param row of the model at a relative humidity, %
     */
    public PooledCurve(NestedFit fit, List<RoomSessions> rooms, CurveRange range, DoubleFunction<double[]> row) {
        this.fit = fit;
        this.rooms = List.copyOf(rooms);
        this.range = range;
        this.row = row;
        oneRoom = rooms.size() == 1;
    }

    /**
     * Names and scale of the plot.
     *
     * @param title what is drawn
     * @param humidity label of the abscissa
     * @param response label of the ordinate
     * @param ofPct abscissa of a relative humidity, %
     * @param ofColumn abscissa of a session's mean in the first column
     */
    public record Axes(
            String title, String humidity, String response, DoubleUnaryOperator ofPct, DoubleUnaryOperator ofColumn) {}

    /** Where it is drawn. */
    public CurveRange range() {
        return range;
    }

    /** The row of the change from the curve's beginning to its end. */
    public double[] changeRow() {
        double[] change = row.apply(range.toPct());
        double[] begin = row.apply(range.fromPct());
        for (int i = 0; i < change.length; i++) {
            change[i] -= begin[i];
        }
        return change;
    }

    /** The change of the mean from the curve's beginning to its end. */
    public Quantity change() {
        return fit.contrast(changeRow());
    }

    /** The same in a room not yet known. */
    public Quantity changeInNewRoom() {
        return fit.inNewRoom(changeRow());
    }

    /** Mean and bands at the grid's humidities; no band of a new room where there is one room. */
    public List<CurvePoint> points() {
        return range.grid().stream().map(this::point).toList();
    }

    private CurvePoint point(double rhPct) {
        double[] weights = row.apply(rhPct);
        Quantity mean = fit.contrast(weights);
        double reach = FitFigures.reach(mean);
        double roomReach = FitFigures.reach(fit.inNewRoom(weights));
        return new CurvePoint(
                rhPct,
                mean.value(),
                mean.value() - reach,
                mean.value() + reach,
                oneRoom ? null : mean.value() - roomReach,
                oneRoom ? null : mean.value() + roomReach);
    }

    /** Bands, mean, and each room's session means as they are, unadjusted. */
    public Plot plot(List<CurvePoint> points, Axes axes) {
        List<Double> x = points.stream()
                .map(point -> axes.ofPct().applyAsDouble(point.rhPct()))
                .toList();
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
        rooms.forEach(room -> series.add(sessionMeans(room, axes)));
        return new Plot("curve", axes.title(), axes.humidity(), axes.response(), series);
    }

    private static Series sessionMeans(RoomSessions room, Axes axes) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (Moments session : room.sessions()) {
            x.add(axes.ofColumn().applyAsDouble(session.mean(0)));
            y.add(session.mean(session.columns() - 1));
        }
        return new Series(room.key(), Mark.POINTS, x, y, List.of(), List.of());
    }

    /** The title of a curve: response, what it is over, the shot. */
    public static String title(String noun, String over, String shot) {
        return Character.toUpperCase(noun.charAt(0)) + noun.substring(1) + " over " + over + ", shot " + shot
                + ": each point the plain mean of a session";
    }
}
