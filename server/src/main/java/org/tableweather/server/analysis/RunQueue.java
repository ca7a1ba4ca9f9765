package org.tableweather.server.analysis;

import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Makes a few analyses at a time, lets a few more wait, of each caller a few, and refuses the rest. */
@ApplicationScoped
class RunQueue {
    private static final int RETRY_AFTER_SECONDS = 10;

    private final int concurrent;
    private final int waiting;
    private final int perCaller;
    private final Map<String, Integer> taken = new HashMap<>();
    private int all;
    private final ThreadPoolExecutor workers;

    RunQueue(
            @ConfigProperty(name = "tableweather.runs.concurrent") int concurrent,
            @ConfigProperty(name = "tableweather.runs.waiting") int waiting,
            @ConfigProperty(name = "tableweather.runs.per-caller") int perCaller) {
        if (concurrent < 1 || waiting < 0 || perCaller < 1) {
            throw new IllegalArgumentException("tableweather.runs.concurrent = " + concurrent
                    + " must be at least 1, tableweather.runs.waiting = " + waiting
                    + " at least 0, tableweather.runs.per-caller = " + perCaller + " at least 1: correct them");
        }
        this.concurrent = concurrent;
        this.waiting = waiting;
        this.perCaller = perCaller;
        AtomicInteger number = new AtomicInteger();
        this.workers = new ThreadPoolExecutor(
                concurrent, concurrent, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "analysis-" + number.incrementAndGet());
                    thread.setDaemon(true);
                    return thread;
                });
    }

    /**
     * Takes a place for one piece of work.
     *
     * @throws Refusal when all are taken, or this caller has as many as one may
     */
    synchronized void takePlace(RunCaller caller) {
        int own = taken.getOrDefault(caller.bounded(), 0);
        if (own >= perCaller) {
            throw tooMany(
                    own + " analyses that you asked for are being made or wait, which is as many as one caller may"
                            + " have: wait for one of them");
        }
        if (all >= concurrent + waiting) {
            throw tooMany(concurrent + " analyses are being made and " + waiting
                    + " wait, which is as many as may: ask again");
        }
        taken.put(caller.bounded(), own + 1);
        all++;
    }

    private static Refusal tooMany(String why) {
        return new Refusal(ErrorCode.TOO_MANY_RUNS, why + " in " + RETRY_AFTER_SECONDS + " s")
                .withHeader("Retry-After", Integer.toString(RETRY_AFTER_SECONDS));
    }

    /** Gives back a place that no work was put in. */
    synchronized void givePlaceBack(RunCaller caller) {
        taken.computeIfPresent(caller.bounded(), (key, own) -> own > 1 ? own - 1 : null);
        all--;
    }

    /** Puts work in the place that was taken. */
    void put(Runnable work, RunCaller caller) {
        workers.execute(new Placed(work, caller));
    }

    /** Takes work out again if it has not begun. */
    void remove(Runnable work, RunCaller caller) {
        if (workers.remove(new Placed(work, caller))) {
            givePlaceBack(caller);
        }
    }

    /**
     * Does work in its turn, and waits for it.
     *
     * @throws Refusal as {@link #takePlace}
     */
    <T> T inTurn(Supplier<T> work, RunCaller caller) {
        takePlace(caller);
        FutureTask<T> task = new FutureTask<>(work::get);
        put(task, caller);
        try {
            return task.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException ours) {
                throw ours;
            }
            throw new IllegalStateException("an analysis failed", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            task.cancel(true);
            remove(task, caller);
            throw new IllegalStateException("the server ends: nobody waits for the analysis", e);
        }
    }

    /** What waits, or does not end in time, is interrupted: the next start says so. */
    void onStop(@Observes ShutdownEvent event) {
        workers.getQueue().clear();
        workers.shutdown();
    }

    /** Work that gives its place back at the end; equal when the work is the same. */
    private final class Placed implements Runnable {
        private final Runnable work;
        private final RunCaller caller;

        Placed(Runnable work, RunCaller caller) {
            this.work = work;
            this.caller = caller;
        }

        @Override
        public void run() {
            try {
                work.run();
            } finally {
                givePlaceBack(caller);
            }
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Placed placed && placed.work == work;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(work);
        }
    }
}
