package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;

/**
 * The humidities over which a curve is drawn.
 *
 * @param fromPct where it begins, %RH
 * @param toPct where it ends, %RH
 */
public record CurveRange(double fromPct, double toPct) {

    /**
     * The ends asked for; where one is not, the outermost round humidity within the data, or the data's own end.
     *
     * @param lowestPct of the sessions, %RH
     * @param highestPct of the sessions, %RH
     * @throws IllegalArgumentException when it would end before it begins; the message holds both and the remedy
     */
    public static CurveRange of(double lowestPct, double highestPct, AskedRange asked) {
        double step = step(highestPct - lowestPct);
        boolean round = Math.ceil(lowestPct / step) < Math.floor(highestPct / step);
        double from = asked.fromPct().orElse(round ? Math.ceil(lowestPct / step) * step : lowestPct);
        double to = asked.toPct().orElse(round ? Math.floor(highestPct / step) * step : highestPct);
        if (!(from <= to)) {
            throw new IllegalArgumentException("the curve would begin at " + Figures.plain(from) + " and end at "
                    + Figures.plain(to) + " %RH: set both " + AskedRange.FROM + " and " + AskedRange.TO);
        }
        return new CurveRange(from, to);
    }

    private static double step(double range) {
        if (range <= 15) {
            return 1;
        }
        return range <= 45 ? 2.5 : 5;
    }

    /** Its ends and the round humidities between. */
    public List<Double> grid() {
        double step = step(toPct - fromPct);
        List<Double> grid = new ArrayList<>();
        grid.add(fromPct);
        for (long i = (long) Math.floor(fromPct / step) + 1; i * step < toPct; i++) {
            grid.add(i * step);
        }
        grid.add(toPct);
        return grid;
    }

    /** In words: {@code 30 to 70}. */
    public String words() {
        return rounded(fromPct) + " to " + rounded(toPct);
    }

    private static String rounded(double rhPct) {
        return Figures.plain(Math.round(rhPct * 10) / 10.0);
    }
}
