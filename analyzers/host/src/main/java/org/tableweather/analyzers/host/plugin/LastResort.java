package org.tableweather.analyzers.host.plugin;

import java.util.concurrent.TimeUnit;

/** Ends the plugin process when a run is far beyond its time: its host, which would have ended it, is gone. */
final class LastResort {
    private static final long LOOK_EVERY_MILLIS = 1000;
    private static final int ENDED = 124;

    private final long patienceNanos;
    private volatile long begun;
    private volatile boolean running;

    LastResort(long limitMillis) {
        this.patienceNanos = 2 * TimeUnit.MILLISECONDS.toNanos(limitMillis);
        Thread watch = new Thread(this::watch, "last resort");
        watch.setDaemon(true);
        watch.setPriority(Thread.MAX_PRIORITY);
        watch.start();
    }

    void begin() {
        begun = System.nanoTime();
        running = true;
    }

    void end() {
        running = false;
    }

    private void watch() {
        try {
            while (!running || System.nanoTime() - begun < patienceNanos) {
                Thread.sleep(LOOK_EVERY_MILLIS);
            }
        } catch (InterruptedException e) {
            // an analyzer that interrupts other threads has no more time
        }
        Runtime.getRuntime().halt(ENDED);
    }
}
