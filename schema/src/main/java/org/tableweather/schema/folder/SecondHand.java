package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * A second thread that takes one job after the other, in the order they are given. Whoever gives a job waits while an
 * earlier one but one is not done: no more than two wait in memory.
 */
final class SecondHand implements AutoCloseable {

    /** What the second thread does. */
    @FunctionalInterface
    interface Job {
        void run() throws IOException;
    }

    private final ExecutorService thread = Executors.newSingleThreadExecutor(job -> {
        Thread made = new Thread(job, "sessions");
        made.setDaemon(true);
        return made;
    });
    private Future<?> before;
    private Future<?> last;

    /**
     * Gives a job.
     *
     * @throws IOException what an earlier job threw
     */
    void give(Job job) throws IOException {
        await(before);
        before = last;
        last = thread.submit(() -> {
            job.run();
            return null;
        });
    }

    /**
     * Waits until every job is done; what they wrote can be read afterwards.
     *
     * @throws IOException what a job threw
     */
    void finish() throws IOException {
        await(before);
        await(last);
        before = null;
        last = null;
    }

    private static void await(Future<?> job) throws IOException {
        if (job == null) {
            return;
        }
        try {
            job.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted while a session was judged");
        } catch (ExecutionException e) {
            rethrow(e.getCause());
        }
    }

    private static void rethrow(Throwable cause) throws IOException {
        if (cause instanceof IOException failure) {
            throw failure;
        }
        if (cause instanceof RuntimeException failure) {
            throw failure;
        }
        if (cause instanceof Error failure) {
            throw failure;
        }
        throw new IllegalStateException(cause);
    }

    /** Gives up what is not done. */
    @Override
    public void close() {
        thread.shutdownNow();
        boolean interrupted = false;
        while (!thread.isTerminated()) {
            try {
                thread.awaitTermination(1, java.util.concurrent.TimeUnit.HOURS);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
