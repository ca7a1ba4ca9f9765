package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Another program, timed from start to end.
 *
 * @param seconds wall time
 * @param output its standard output
 * @param peakMegabytes the most memory it held, MB; NaN where the system does not tell
 */
record Measured(double seconds, String output, double peakMegabytes) {

    /**
     * Runs and waits.
     *
     * @throws IOException when it cannot start, or ends with another status than 0
     */
    static Measured run(Path folder, Map<String, String> environment, List<String> command)
            throws IOException, InterruptedException {
        ProcessBuilder builder =
                new ProcessBuilder(command).directory(folder.toFile()).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().putAll(environment);
        long start = System.nanoTime();
        Process process = builder.start();
        PeakMemory memory = PeakMemory.watch(process);
        process.getOutputStream().close();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int status = process.waitFor();
        double seconds = (System.nanoTime() - start) / 1e9;
        if (status != 0) {
            throw new IOException(String.join(" ", command) + " ended with status " + status + "\n" + output);
        }
        return new Measured(seconds, output, memory.megabytes());
    }

    /** The middle one; of an even number the mean of the two in the middle. */
    static double median(double... seconds) {
        double[] sorted = seconds.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** The median of the later half, when code and caches are warm. */
    static double laterMedian(double... seconds) {
        return median(Arrays.copyOfRange(seconds, seconds.length / 2, seconds.length));
    }
}
