package org.tableweather.analyzers.bench;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.path.PathPrediction;
import org.tableweather.analyzers.standard.catalogue.rail.RailModel;

/** How long {@code rail-model} takes over 100,000 pairs of 100 rooms, and a band of {@code path-prediction}: {@code analyzers/bench/paths}. */
public final class RailTimes {

    private static final HeldPairs LARGE = new HeldPairs(100, 10, 100);
    private static final HeldPairs SMALL = new HeldPairs(12, 5, 24);
    private static final int REPEATS = 3;
    private static final int FEW = 200;
    private static final int MANY = 10_000;

    private RailTimes() {}

    /**
     * Runs.
     *
     * @param arguments none
     */
    public static void main(String[] arguments) {
        RailModel rail = new RailModel();
        for (int i = 0; i < REPEATS; i++) {
            long start = System.nanoTime();
            var summaries = LARGE.summaries(rail, 1);
            double summarised = seconds(start);
            Analysis answer = conclude(rail, summaries, Map.of());
            System.out.printf(
                    Locale.ROOT,
                    "rail-model, 100000 pairs of 100 rooms, run %d: %.2f s, of which inventing and summarising %.2f s (%s)%n",
                    i + 1,
                    seconds(start),
                    summarised,
                    answer.getClass().getSimpleName());
        }
        band();
    }

    /** What 10,000 draws take beyond 200, all else being the same. */
    private static void band() {
        PathPrediction path = new PathPrediction();
        var summaries = SMALL.summaries(path, 1);
        for (int i = 0; i < REPEATS; i++) {
            double few = timed(path, summaries, FEW);
            double many = timed(path, summaries, MANY);
            System.out.printf(
                    Locale.ROOT,
                    "path-prediction of kick-4-rail over 12 rooms, run %d: %.2f s with %d draws, %.2f s with %d: the band %.2f s%n",
                    i + 1,
                    few,
                    FEW,
                    many,
                    MANY,
                    many - few);
        }
    }

    private static <S> double timed(Analyzer<S> analyzer, List<SessionSummary<S>> summaries, int draws) {
        long start = System.nanoTime();
        Analysis answer =
                conclude(analyzer, summaries, Map.of("shot", "kick-4-rail", "draws", Integer.toString(draws)));
        if (answer instanceof Analysis.Declined declined) {
            throw new IllegalStateException(declined.detail());
        }
        return seconds(start);
    }

    private static <S> Analysis conclude(
            Analyzer<S> analyzer, List<SessionSummary<S>> summaries, Map<String, String> set) {
        return analyzer.conclude(new Listed<>(summaries), Parameters.of(analyzer.info(), set));
    }

    private record Listed<S>(List<SessionSummary<S>> sessions) implements SummarySource<S> {
        @Override
        public String hash() {
            return "sha256:" + sessions.size();
        }
    }

    private static double seconds(long startNanos) {
        return (System.nanoTime() - startNanos) / 1e9;
    }
}
