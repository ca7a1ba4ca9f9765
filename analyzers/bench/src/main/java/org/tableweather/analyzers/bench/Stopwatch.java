package org.tableweather.analyzers.bench;

import java.util.concurrent.Callable;

/** Times work inside this program. */
final class Stopwatch {

    private Stopwatch() {}

    /** Seconds of one run; what it gives is kept from being optimised away by being looked at. */
    static double seconds(Callable<?> work) {
        long start = System.nanoTime();
        try {
            if (work.call() == null) {
                throw new IllegalStateException("the timed work gave nothing: nothing was timed");
            }
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException("the timed work failed", e);
        }
        return (System.nanoTime() - start) / 1e9;
    }

    /** The median of the later half of so many runs, seconds. */
    static double median(int times, Callable<?> work) {
        double[] seconds = new double[times];
        for (int i = 0; i < times; i++) {
            seconds[i] = seconds(work);
        }
        return Measured.laterMedian(seconds);
    }
}
