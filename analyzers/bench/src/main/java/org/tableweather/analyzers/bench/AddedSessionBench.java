package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** One more session of 100 attempts, read, checked, summarised and concluded over with all the others, beside the first run. */
final class AddedSessionBench {
    private static final int ATTEMPTS = 100;
    private static final int FIRST_RUNS = 4;
    /** The added session takes a hundredth of the first run: it is repeated more often, until its code is as warm. */
    private static final int ADDED = 10;

    private AddedSessionBench() {}

    static <S> void run(Analyzer<S> analyzer, Path work, BenchOptions options) throws IOException {
        Path pool = work.resolve("first");
        Path more = work.resolve("added");
        new InventedPool(100, 10, options.trialsPerSession(), 1).write(pool);
        new InventedPool(1, 1, ATTEMPTS, 2).write(more);
        List<SessionSummary<S>> known = summaries(analyzer, pool);
        Stopwatch.Cost first = Stopwatch.cost(FIRST_RUNS, () -> answer(analyzer, summaries(analyzer, pool)));
        Stopwatch.Cost added = Stopwatch.cost(ADDED * options.warmFits(), () -> {
            List<SessionSummary<S>> all = new ArrayList<>(known);
            all.addAll(summaries(analyzer, more));
            return answer(analyzer, all);
        });
        Stopwatch.Cost reading = Stopwatch.cost(ADDED * options.warmFits(), () -> summaries(analyzer, more));
        Report.print(
                "one session of %d attempts added to %,d: %.4f s (of it read, checked and summarised %.4f s), %.2f %% of"
                        + " the first run (%.2f s); bound 1 %%",
                ATTEMPTS,
                1000L * options.trialsPerSession(),
                added.elapsed(),
                reading.elapsed(),
                100 * added.elapsed() / first.elapsed(),
                first.elapsed());
        Report.print(
                "  processor time: %.4f s (of it %.4f s), %.2f %% of the first run (%.2f s)",
                added.processor(), reading.processor(), 100 * added.processor() / first.processor(), first.processor());
    }

    private static <S> List<SessionSummary<S>> summaries(Analyzer<S> analyzer, Path folder) throws IOException {
        return LocalSummaries.read(analyzer, List.of(folder), bytes -> {}).summaries();
    }

    private static <S> AnalysisRun answer(Analyzer<S> analyzer, List<SessionSummary<S>> summaries) {
        return AnalysisRun.conclude(analyzer, Summaries.of(summaries), Map.of());
    }
}
