package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** How much memory a folder of very many trials takes from reading to the answer. */
final class LargeBench {
    private static final int ROOMS = 1000;
    private static final int SESSIONS_IN_ROOM = 10;
    private static final String HEAP = "1g";

    private LargeBench() {}

    /** The pool: 1,000 rooms with 10 sessions each. */
    static void write(Path folder, BenchOptions options) throws IOException {
        int trials = Math.max(1, options.largeTrials() / (ROOMS * SESSIONS_IN_ROOM));
        new InventedPool(ROOMS, SESSIONS_IN_ROOM, trials, 1).write(folder);
    }

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        Path folder = work.resolve("large");
        write(folder, options);
        double csvMb = Files.size(folder.resolve("trials.csv")) / 1e6;
        Measured answer = Java.run(root, HEAP, FolderAnswer.class, folder.toString());
        Report.print(
                "%s: %.1f s, %.0f MB at its peak (heap up to %s, trials.csv %.0f MB); bound 2000 MB",
                answer.output().strip(), answer.seconds(), answer.peakMegabytes(), HEAP, csvMb);
    }
}
