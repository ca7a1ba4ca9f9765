package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;

/** Restitution and friction over humidity at 21 °C. */
final class RailPlots {

    private static final int POINTS = 41;
    private static final double STANDARD_C = 21;

    private final FittedRail rail;

    RailPlots(FittedRail rail) {
        this.rail = rail;
    }

    List<Plot> list() {
        return List.of(
                plot("restitution", "Restitution of the rail", "restitution at 1 m/s across", 0),
                plot("friction", "Friction of the rail", "friction", 1));
    }

    private Plot plot(String id, String title, String label, int parameter) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        List<Double> lower = new ArrayList<>();
        List<Double> upper = new ArrayList<>();
        RailTerm level = parameter == 0 ? RailTerm.RESTITUTION : RailTerm.FRICTION;
        for (int i = 0; i < POINTS; i++) {
            double rhPct = rail.pool.lowestPct() + (rail.pool.highestPct() - rail.pool.lowestPct()) * i / (POINTS - 1);
            double at = rail.pool.question.measure().x(rhPct, STANDARD_C, rail.pool.typical);
            if (!Double.isNaN(at)) {
                double value = rail.parameters(at)[parameter];
                double reach = rail.reach(rail.errors(at)[parameter], rail.df(level));
                x.add(rhPct);
                y.add(told(value, parameter));
                lower.add(told(value - reach, parameter));
                upper.add(told(value + reach, parameter));
            }
        }
        return new Plot(
                id,
                title,
                "relative humidity (%)",
                label,
                List.of(
                        new Series("95 % band of the average room", Mark.BAND, x, y, lower, upper),
                        new Series("average room", Mark.LINE, x, y, List.of(), List.of())));
    }

    private static double told(double value, int parameter) {
        return parameter == 0 ? value : StrictMath.exp(value);
    }
}
