package org.tableweather.analyzers.bench;

import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/** How a fit from summaries, and the whole answer with all that is told beside the fit, grow with the number of sessions. */
final class GrowthBench {
    private static final int SESSIONS_IN_ROOM = 10;
    private static final int TRIALS = 20;
    /** Ten thousand sessions: the size that a bound is set for. */
    private static final int BOUND_FOR = 10_000;

    private GrowthBench() {}

    private record Cost(int sessions, double fit, double answer) {}

    static <S> void run(Analyzer<S> analyzer, BenchOptions options) {
        Cost before = null;
        for (int wanted : options.growthSessions()) {
            int sessions = wanted / SESSIONS_IN_ROOM * SESSIONS_IN_ROOM;
            Cost cost = measure(analyzer, sessions, options);
            Report.print(
                    "%,d sessions of %,d rooms: fit %.4f s%s, whole answer %.3f s",
                    sessions,
                    sessions / SESSIONS_IN_ROOM,
                    cost.fit,
                    sessions == BOUND_FOR ? " (bound 0.1)" : "",
                    cost.answer);
            if (before != null) {
                Report.print(
                        "  %.1f times the sessions take %.1f times the fit, %.1f times the answer; bound: no more",
                        (double) sessions / before.sessions, cost.fit / before.fit, cost.answer / before.answer);
            }
            before = cost;
        }
    }

    private static <S> Cost measure(Analyzer<S> analyzer, int sessions, BenchOptions options) {
        HeldTrials held = HeldTrials.draw(sessions / SESSIONS_IN_ROOM, SESSIONS_IN_ROOM, TRIALS, sessions);
        List<RoomSessions> rooms = held.pass();
        Summaries<S> summaries = Summaries.of(HeldSummaries.of(analyzer, held));
        // a large pool warms the code by itself, and takes long
        int times = (int) Math.max(4, Math.min(options.warmFits(), 60_000L * options.warmFits() / (60L * sessions)));
        return new Cost(
                sessions,
                Stopwatch.median(times, () -> HeldFit.fit(rooms).coefficient(1).orElseThrow()),
                Stopwatch.median(times, () -> AnalysisRun.conclude(analyzer, summaries, Map.of())));
    }
}
