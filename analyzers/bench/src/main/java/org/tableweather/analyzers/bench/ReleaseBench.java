package org.tableweather.analyzers.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/** How much memory a release of very many trials takes, and its size beside the same rows as gzip'd CSV. */
final class ReleaseBench {
    private static final String HEAP = "1g";

    private ReleaseBench() {}

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        Path folder = work.resolve("contribution");
        Path release = work.resolve("release-1");
        LargeBench.write(folder, options);
        Measured built = Java.run(root, HEAP, FolderRelease.class, "build", folder.toString(), release.toString());
        report("build", built);
        report("verify", Java.run(root, HEAP, FolderRelease.class, "verify", release.toString()));
        double csvMb = Files.size(folder.resolve("trials.csv")) / 1e6;
        double packedMb = gzipMb(folder.resolve("trials.csv"), work.resolve("trials.csv.gz"));
        double releaseMb = megabytes(release);
        Report.print(
                "release / trials.csv.gz: %.2f (%.1f MB / %.1f MB; trials.csv %.0f MB); bound 0.5",
                releaseMb / packedMb, releaseMb, packedMb, csvMb);
    }

    private static void report(String what, Measured measured) {
        Report.print(
                "%s: %s in %.1f s, %.0f MB at its peak; heap up to %s",
                what, measured.output().strip(), measured.seconds(), measured.peakMegabytes(), HEAP);
    }

    private static double gzipMb(Path file, Path packed) throws IOException {
        try (OutputStream out = new GZIPOutputStream(new BufferedOutputStream(Files.newOutputStream(packed)))) {
            Files.copy(file, out);
        }
        return Files.size(packed) / 1e6;
    }

    private static double megabytes(Path folder) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            long bytes = 0;
            for (Path path : paths.filter(Files::isRegularFile).toList()) {
                bytes += Files.size(path);
            }
            return bytes / 1e6;
        }
    }
}
