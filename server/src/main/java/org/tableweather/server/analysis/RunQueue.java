package org.tableweather.server.analysis;

import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Makes a few analyses at a time, lets a few more wait, and refuses the rest. */
@ApplicationScoped
class RunQueue {
    private static final int RETRY_AFTER_SECONDS = 10;

    private final int concurrent;
    private final int waiting;
    private final Semaphore places;
    private final ThreadPoolExecutor workers;

    RunQueue(
            @ConfigProperty(name = "tableweather.runs.concurrent") int concurrent,
            @ConfigProperty(name = "tableweather.runs.waiting") int waiting) {
        if (concurrent < 1 || waiting < 0) {
            throw new IllegalArgumentException("tableweather.runs.concurrent = " + concurrent
                    + " must be at least 1, tableweather.runs.waiting = " + waiting + " at least 0: correct them");
        }
        this.concurrent = concurrent;
        this.waiting = waiting;
        this.places = new Semaphore(concurrent + waiting);
        AtomicInteger number = new AtomicInteger();
        this.workers = new ThreadPoolExecutor(
                concurrent, concurrent, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "analysis-" + number.incrementAndGet());
                    thread.setDaemon(true);
                    return thread;
                });
    }

    /**
     * Takes a place for one job.
     *
     * @throws Refusal when all are taken
     */
    void takePlace() {
        if (!places.tryAcquire()) {
            throw new Refusal(
                            ErrorCode.TOO_MANY_RUNS,
                            concurrent + " analyses are being made and " + waiting
                                    + " wait, which is as many as may: ask again in " + RETRY_AFTER_SECONDS + " s")
                    .withHeader("Retry-After", Integer.toString(RETRY_AFTER_SECONDS));
        }
    }

    /** Gives a place back that no job was put in. */
    void givePlaceBack() {
        places.release();
    }

    /** Puts a job in the place that was taken. */
    void put(RunJob job) {
        workers.execute(new Placed(job));
    }

    /** Takes a job out again if it has not begun. */
    void remove(RunJob job) {
        if (workers.remove(new Placed(job))) {
            places.release();
        }
    }

    /** What waits, or does not end in time, is interrupted: the next start says so. */
    void onStop(@Observes ShutdownEvent event) {
        workers.getQueue().clear();
        workers.shutdown();
    }

    /** A job that gives its place back at the end; equal when the job is the same. */
    private final class Placed implements Runnable {
        private final RunJob job;

        Placed(RunJob job) {
            this.job = job;
        }

        @Override
        public void run() {
            try {
                job.run();
            } finally {
                places.release();
            }
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Placed placed && placed.job == job;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(job);
        }
    }
}
