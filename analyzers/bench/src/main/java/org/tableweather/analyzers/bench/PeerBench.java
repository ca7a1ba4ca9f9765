package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** One pass over the data and the fit, beside the fit alone of R's lme4 and nlme; each in a process of its own. */
final class PeerBench {
    private static final String OURS = "ours";

    private final Path root;
    private final Path file;

    private PeerBench(Path root, Path file) {
        this.root = root;
        this.file = file;
    }

    /** What one process told: seconds, peak memory and its answer. */
    private record Told(double first, double warm, double megabytes, String slope, String criterion) {
        static Told of(Measured measured) {
            return new Told(
                    Double.parseDouble(line(measured, "first")),
                    Double.parseDouble(line(measured, "warm")),
                    measured.peakMegabytes(),
                    line(measured, "slope"),
                    line(measured, "criterion"));
        }

        private static String line(Measured measured, String name) {
            return measured.output()
                    .lines()
                    .filter(line -> line.startsWith(name + " "))
                    .map(line -> line.substring(name.length() + 1))
                    .findFirst()
                    .orElse("NaN");
        }
    }

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        Files.createDirectories(work);
        PeerBench bench = new PeerBench(root, work.resolve("held.bin"));
        HeldTrials.draw(100, 10, options.trialsPerSession(), 1).write(bench.file);
        Told ours = Told.of(Java.run(root, "256m", HeldFit.class, bench.file.toString(), "" + options.warmFits()));
        print(OURS, ours);
        if (options.withR()) {
            bench.beside("lme4", ours, 50);
            bench.beside("nlme", ours, 15);
        }
    }

    private void beside(String name, Told ours, int bound) throws IOException, InterruptedException {
        Told peer = Told.of(Measured.run(
                root,
                Map.of(),
                List.of(
                        "Rscript",
                        root.resolve("analyzers/bench/src/main/r/peers.R").toString(),
                        file.toString(),
                        name)));
        print(name, peer);
        Report.print(
                "%s / pass and fit: %.0f in a running JVM, %.0f in one just started; bound at least %d",
                name, peer.first() / ours.warm(), peer.first() / ours.first(), bound);
        Report.print(
                "our peak memory / that of %s: %.2f; bound at most 0.33", name, ours.megabytes() / peer.megabytes());
    }

    private static void print(String name, Told told) {
        Report.print(
                "  %s: %s s%s, %.0f MB, slope %s, criterion %s",
                name,
                told.first(),
                name.equals(OURS) ? " the first time, " + told.warm() + " s warm" : " (fit alone)",
                told.megabytes(),
                told.slope(),
                told.criterion());
    }
}
