package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * Our side of the comparison with R's fits, a program of its own so that its memory can be told: reads columns, then times one pass over
 * them and the fit, as R's fit is timed from its data frame.
 */
public final class HeldFit {

    private HeldFit() {}

    /**
     * Prints {@code first SECONDS}, {@code warm SECONDS}, {@code slope B}, {@code criterion C}.
     *
     * @param arguments a file of {@link HeldTrials}, and how often to repeat for the median
     */
    public static void main(String[] arguments) throws IOException {
        HeldTrials held = HeldTrials.read(Path.of(arguments[0]));
        long start = System.nanoTime();
        NestedFit fit = fit(held.pass());
        Quantity slope = fit.coefficient(1).orElseThrow();
        double first = (System.nanoTime() - start) / 1e9;
        double[] warm = new double[Integer.parseInt(arguments[1])];
        for (int i = 0; i < warm.length; i++) {
            start = System.nanoTime();
            fit(held.pass()).coefficient(1).orElseThrow();
            warm[i] = (System.nanoTime() - start) / 1e9;
        }
        System.out.printf(
                Locale.ROOT,
                "first %.4f%nwarm %.4f%nslope %.12g%ncriterion %.12g%n",
                first,
                Measured.laterMedian(warm),
                slope.value(),
                fit.criterion());
    }

    /** The default model of columns h, h², t and the response: a room's intercept and slope, a session's intercept. */
    static NestedFit fit(List<RoomSessions> rooms) {
        if (NestedModel.withDefaults().withRandom(0, 1).fit(rooms) instanceof NestedFit fit) {
            return fit;
        }
        throw new IllegalStateException("there is no fit of these rooms: draw more sessions");
    }
}
