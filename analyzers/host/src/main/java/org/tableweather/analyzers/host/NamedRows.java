package org.tableweather.analyzers.host;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jfree.chart.axis.SymbolAxis;
import org.tableweather.analyzers.spi.Plot;

/**
 * A plot whose point series each hold one point, at places 1, 2, 3 ...: the places mean nothing but the order, so it is drawn
 * in rows that bear the names, the first at the top.
 *
 * @param names from place 1 on; empty for a place without a point
 */
record NamedRows(List<String> names) {

    /** More rows than a reader can follow are drawn by number. */
    private static final int MOST = 60;

    private static final double ROW_FONTS = 1.7;
    private static final double FRAME_FONTS = 15;

    /** The rows of a plot that has them. */
    static Optional<NamedRows> of(Plot plot) {
        List<Plot.Series> points = plot.series().stream()
                .filter(series -> series.mark() == Plot.Mark.POINTS)
                .toList();
        Map<Integer, String> places = new TreeMap<>();
        for (Plot.Series one : points) {
            double x = one.x().size() == 1 ? one.x().get(0) : 0;
            if (x < 1 || x > MOST || x != Math.rint(x) || places.put((int) x, one.name()) != null) {
                return Optional.empty();
            }
        }
        boolean beyond =
                plot.series().stream().flatMap(series -> series.x().stream()).anyMatch(x -> x < 1 || x > MOST);
        return places.isEmpty() || beyond ? Optional.empty() : Optional.of(new NamedRows(named(places)));
    }

    private static List<String> named(Map<Integer, String> places) {
        Map<String, String> shortNames = RoomNames.of(places.values());
        List<String> names = new ArrayList<>();
        places.forEach((place, name) -> {
            while (names.size() < place - 1) {
                names.add("");
            }
            names.add(shortNames.get(name));
        });
        return names;
    }

    /** Paper that is high enough for the rows. */
    static ChartSize room(Plot plot, ChartSize size) {
        return of(plot).map(rows -> rows.room(size)).orElse(size);
    }

    private ChartSize room(ChartSize size) {
        int needed = (int) (size.fontPx() * (FRAME_FONTS + ROW_FONTS * names.size()));
        return needed <= size.heightPx() ? size : new ChartSize(size.widthPx(), needed, size.fontPx());
    }

    /** The axis that bears the names. */
    SymbolAxis axis(String label, Font font) {
        List<String> symbols = new ArrayList<>();
        symbols.add("");
        symbols.addAll(names);
        SymbolAxis axis = new SymbolAxis(label, symbols.toArray(String[]::new));
        axis.setGridBandsVisible(false);
        axis.setRange(0.4, names.size() + 0.6);
        axis.setInverted(true);
        axis.setTickLabelFont(font);
        return axis;
    }

    /** A band that ends with a row reaches past it. */
    double edge(double x) {
        if (x <= 1) {
            return 0.4;
        }
        return x >= names.size() ? names.size() + 0.6 : x;
    }
}
