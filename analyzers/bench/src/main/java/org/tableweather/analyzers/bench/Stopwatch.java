package org.tableweather.analyzers.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.concurrent.Callable;

/** Times work inside this program. */
final class Stopwatch {

    private static final OperatingSystemMXBean PROCESS =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

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

    /**
     * What work took.
     *
     * @param elapsed median of the later half of the runs, s
     * @param processor mean of the same runs over all threads of this program, s: what elapses on a machine that does nothing else
     *     and has one processor
     */
    record Cost(double elapsed, double processor) {}

    /** Elapsed and processor time of so many runs, at least 2. */
    static Cost cost(int times, Callable<?> work) {
        double[] seconds = new double[times];
        long before = 0;
        for (int i = 0; i < times; i++) {
            if (i == times / 2) {
                before = PROCESS.getProcessCpuTime();
            }
            seconds[i] = seconds(work);
        }
        double processor = (PROCESS.getProcessCpuTime() - before) / 1e9 / (times - times / 2);
        return new Cost(Measured.laterMedian(seconds), processor);
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
