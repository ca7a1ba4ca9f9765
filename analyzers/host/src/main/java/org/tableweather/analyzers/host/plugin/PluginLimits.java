package org.tableweather.analyzers.host.plugin;

import java.time.Duration;

/**
 * Bounds of one run: one session's summary, or one conclusion.
 *
 * @param time wall clock
 * @param memoryMb heap of the process, MiB
 */
public record PluginLimits(Duration time, int memoryMb) {
    private static final int LEAST_MB = 16;

    public PluginLimits {
        if (time.isNegative() || time.isZero()) {
            throw new IllegalArgumentException("time " + time + " must be longer than nothing");
        }
        if (memoryMb < LEAST_MB) {
            throw new IllegalArgumentException("memory " + memoryMb + " MiB < " + LEAST_MB + ": a run needs more");
        }
    }

    String timeInWords() {
        return time.toMillis() % 1000 == 0 ? time.toSeconds() + " s" : time.toMillis() + " ms";
    }
}
