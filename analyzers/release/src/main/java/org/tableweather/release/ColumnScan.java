package org.tableweather.release;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.LongConsumer;
import org.tableweather.analyzers.spi.ColumnarAnalyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/**
 * Reads the columns of a release's complete sessions and summarises them, room group by room group.
 *
 * @param <S> the summary
 */
final class ColumnScan<S> {
    private final ReleasePart part;
    private final ColumnarAnalyzer<S> analyzer;
    private final LongConsumer progress;
    private long rows;

    ColumnScan(ReleasePart part, ColumnarAnalyzer<S> analyzer, LongConsumer progress) {
        this.part = part;
        this.analyzer = analyzer;
        this.progress = progress;
    }

    /** All summaries in the order of the files. */
    List<SessionSummary<S>> read(int threads) throws IOException {
        part.mustBeAsReleased();
        List<String> groups = part.roomGroups();
        List<SessionSummary<S>> all = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, Math.min(threads, groups.size())));
        try {
            List<Future<List<SessionSummary<S>>>> parts = new ArrayList<>();
            for (String group : groups) {
                Callable<List<SessionSummary<S>>> task = () -> ofGroup(group);
                parts.add(pool.submit(task));
            }
            for (Future<List<SessionSummary<S>>> one : parts) {
                all.addAll(result(one));
            }
        } finally {
            pool.shutdownNow();
        }
        part.mustBeAll(all.stream().map(SessionSummary::digest).toList());
        return all;
    }

    private List<SessionSummary<S>> ofGroup(String group) throws IOException {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        ReleasedSummaries.ofGroup(analyzer, part.release(), group, summary -> {
            summaries.add(summary);
            tell(summary.trials());
        });
        return summaries;
    }

    private synchronized void tell(long trials) {
        rows += trials;
        progress.accept(rows);
    }

    private static <T> T result(Future<T> future) throws IOException {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("the reading of a release was interrupted");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IOException io) {
                throw io;
            }
            if (e.getCause() instanceof RuntimeException runtime) {
                throw runtime;
            }
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
