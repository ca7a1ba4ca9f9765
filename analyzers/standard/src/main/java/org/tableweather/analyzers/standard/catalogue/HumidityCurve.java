package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * The mean of the response over humidity, at 21 °C and at the pooled mean of the other covariates. Points of the curve are
 * named by relative humidity at 21 °C whatever the measure; the plot is drawn over the measure itself.
 */
final class HumidityCurve {

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final double[] covariateMeans;
    private final PooledCurve curve;
    final double fromPct;
    final double toPct;

    HumidityCurve(HumidityPool pool, HumidityQuestion question, NestedFit fit) {
        this.pool = pool;
        this.question = question;
        covariateMeans = covariateMeans();
        CurveRange range = CurveRange.of(pool.lowestPct(), pool.highestPct(), question.range());
        curve = new PooledCurve(fit, pool.rooms, range, this::row);
        fromPct = range.fromPct();
        toPct = range.toPct();
    }

    private double[] covariateMeans() {
        Moments total = pool.total();
        double[] means = new double[question.asked().size()];
        for (int i = 0; i < means.length; i++) {
            means[i] = total.mean(question.columns().firstAsked() - 1 + i);
        }
        return means;
    }

    CurveRange range() {
        return curve.range();
    }

    /** Its ends in the measure's own unit. */
    String rangeInUnits() {
        return Figures.fixed(abscissa(x(fromPct)), 1) + " to " + Figures.fixed(abscissa(x(toPct)), 1) + " "
                + question.measure().unit;
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
        return curve.changeRow();
    }

    /** The change of the mean from the curve's beginning to its end. */
    Quantity change() {
        return curve.change();
    }

    /** The same in a room not yet known. */
    Quantity changeInNewRoom() {
        return curve.changeInNewRoom();
    }

    List<CurvePoint> points() {
        return curve.points();
    }

    /** Bands, mean, and each room's session means as they are, unadjusted. */
    Plot plot(List<CurvePoint> points) {
        String over = question.measure() == HumidityMeasure.RELATIVE ? "humidity" : question.measure().noun;
        return curve.plot(
                points,
                new PooledCurve.Axes(
                        PooledCurve.title(question.response().noun, over, pool.shot),
                        axis(),
                        question.response().axis(),
                        this::abscissaOf,
                        this::abscissa));
    }

    /** Label of the abscissa. */
    String axis() {
        HumidityMeasure measure = question.measure();
        return measure.noun + ", " + (measure.unit.equals("%RH") ? "%" : measure.unit);
    }
}
