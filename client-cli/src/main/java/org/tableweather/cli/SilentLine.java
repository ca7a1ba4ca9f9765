package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/** Cuts a line on which nothing comes any more: a reader would wait for ever. */
final class SilentLine implements AutoCloseable {
    private static final ScheduledExecutorService WATCH = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "silent lines");
        thread.setDaemon(true);
        return thread;
    });

    private final ScheduledFuture<?> watch;
    private volatile long lastNanos = System.nanoTime();
    private volatile boolean cut;

    /**
     * Watches a stream until closed.
     *
     * @param in is closed when it is silent for too long, so that its reader fails
     * @param longest silence that is borne
     */
    SilentLine(InputStream in, Duration longest) {
        long everyMillis = Math.max(100, longest.toMillis() / 4);
        watch = WATCH.scheduleWithFixedDelay(
                () -> {
                    if (System.nanoTime() - lastNanos > longest.toNanos()) {
                        cut = true;
                        close(in);
                    }
                },
                everyMillis,
                everyMillis,
                TimeUnit.MILLISECONDS);
    }

    /** Something came. */
    void heard() {
        lastNanos = System.nanoTime();
    }

    /** Whether the line was cut for its silence. */
    boolean isCut() {
        return cut;
    }

    private static void close(InputStream in) {
        try {
            in.close();
        } catch (IOException e) {
            // it is given up either way
        }
    }

    @Override
    public void close() {
        watch.cancel(false);
    }
}
