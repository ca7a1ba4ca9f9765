package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The most memory that a process has held at once, as the kernel counts it ({@code VmHWM} of {@code /proc/PID/status}): asked until the
 * process ends. The kernel's count only grows, so all that is missed is growth in the last hundredth of a second.
 */
final class PeakMemory extends Thread {
    private static final int EVERY_MS = 10;

    private final Path status;
    private volatile double megabytes = Double.NaN;

    private PeakMemory(Process process) {
        super("peak memory of " + process.pid());
        this.status = Path.of("/proc", Long.toString(process.pid()), "status");
        setDaemon(true);
    }

    /** Begins to ask. */
    static PeakMemory watch(Process process) {
        PeakMemory watch = new PeakMemory(process);
        watch.start();
        return watch;
    }

    /** What was seen, MB; NaN where the system does not tell. */
    double megabytes() {
        interrupt();
        return megabytes;
    }

    @Override
    public void run() {
        try {
            while (Files.exists(status)) {
                ask();
                Thread.sleep(EVERY_MS);
            }
        } catch (IOException | InterruptedException e) {
            // the process is gone, or nobody asks any more: what was seen last stands
            interrupt();
        }
    }

    private void ask() throws IOException {
        for (String line : Files.readAllLines(status)) {
            if (line.startsWith("VmHWM:")) {
                megabytes = Double.parseDouble(line.replaceAll("[^0-9]", "")) * 1024 / 1e6;
            }
        }
    }
}
