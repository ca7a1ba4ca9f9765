package org.tableweather.analyzers.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Plot;

/** Analyses made up by hand, to draw. */
final class DrawnRuns {
    private DrawnRuns() {}

    /** A curve with bands, and five points in each room; room {@code r} lies {@code r/2} degrees off the mean. */
    static AnalysisRun withRooms(int rooms, boolean invented) {
        List<Double> x = new ArrayList<>();
        List<Double> mean = new ArrayList<>();
        for (double rh = 25; rh <= 75; rh += 1) {
            x.add(rh);
            mean.add(meanDeg(rh));
        }
        List<Plot.Series> series = new ArrayList<>();
        series.add(new Plot.Series(
                "a new room's true curve, 95 %", Plot.Mark.BAND, x, mean, shifted(mean, -3), shifted(mean, 3)));
        series.add(new Plot.Series(
                "mean of all rooms, 95 %", Plot.Mark.BAND, x, mean, shifted(mean, -0.7), shifted(mean, 0.7)));
        for (int room = 0; room < rooms; room++) {
            series.add(room(room, rooms));
        }
        series.add(new Plot.Series("mean of all rooms", Plot.Mark.LINE, x, mean, List.of(), List.of()));
        return run(
                new Plot(
                        "curve",
                        "Final rebound angle and humidity, long-rail bank",
                        "relative humidity, %",
                        "final rebound angle, deg from the normal",
                        series),
                rooms,
                invented);
    }

    /** An analysis that gives no answer. */
    static AnalysisRun declined() {
        return new AnalysisRun(
                info(),
                new AnalysisRun.Dataset(3, 1, 1, false, "sha256:00"),
                new Analysis.Declined(
                        Analysis.Reason.TOO_FEW_RECORDS, "1 session < 3", Map.of(), List.of(), List.of()));
    }

    private static AnalysisRun run(Plot plot, int rooms, boolean invented) {
        return new AnalysisRun(
                info(),
                new AnalysisRun.Dataset(100L * rooms, 5L * rooms, rooms, invented, "sha256:00"),
                new Analysis.Estimated(
                        "Each 10 %RH more makes the final rebound 0.9 deg tighter.",
                        Map.of("shot", "long-rail-bank"),
                        Map.of("method", "REML"),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(plot),
                        List.of(),
                        List.of()));
    }

    private static Plot.Series room(int room, int rooms) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int session = 0; session < 5; session++) {
            double rh = 28 + 10 * session + room % 5;
            x.add(rh);
            y.add(meanDeg(rh) + (room % 12 - 5.5) / 2 + (session % 2 - 0.5) * 0.6);
        }
        return new Plot.Series("club/room-" + room, Plot.Mark.POINTS, x, y, shifted(y, -0.4), shifted(y, 0.4));
    }

    private static double meanDeg(double rhPct) {
        double h = (rhPct - 50) / 10;
        return 31 - 0.9 * h + 0.1 * h * h;
    }

    private static List<Double> shifted(List<Double> values, double by) {
        return values.stream().map(value -> value + by).toList();
    }

    private static AnalyzerInfo info() {
        return new AnalyzerInfo(
                "rebound-humidity", "1.0.0", "1", "t", "q", "m", List.of(), List.of(), List.of(), List.of(), List.of());
    }
}
