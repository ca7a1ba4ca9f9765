package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** All trials of a server as one file, beside psql's copy of the same table. */
final class ExportBench {
    private static final int ROOMS = 100;
    private static final int SESSIONS_PER_ROOM = 10;
    private static final int TRIALS_AT_ONCE = 1_000_000;
    private static final List<String> FORMS = List.of("csv", "ndjson", "parquet");

    private ExportBench() {}

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        Files.createDirectories(work);
        try (BenchServer server = BenchServer.start(root, work.resolve("data"))) {
            long trials = fill(root, server, work, options.exportTrials());
            Path file = work.resolve("trials.out");
            double[] ours = new double[options.repeats()];
            double[] peer = new double[options.repeats()];
            for (int i = 0; i < options.repeats(); i++) {
                peer[i] = server.copyTo("trial", file);
                ours[i] = export(server, "csv", file);
                Report.print(
                        "  CSV %.2f s, %.0f MB; psql \\copy trial to %.2f s", ours[i], Files.size(file) / 1e6, peer[i]);
            }
            double copy = Measured.median(peer);
            double csv = Measured.median(ours);
            Report.print(
                    "speed of the export of %,d trials as CSV / psql \\copy ... to: %.2f (%.2f s / %.2f s); bound at least 0.5",
                    trials, copy / csv, copy, csv);
            for (String form : FORMS.subList(1, FORMS.size())) {
                double seconds = export(server, form, file);
                Report.print("as %s: %.2f s, %.0f MB; bound none", form, seconds, Files.size(file) / 1e6);
            }
            summary(server);
            Files.delete(file);
        }
    }

    private static long fill(Path root, BenchServer server, Path work, int trials)
            throws IOException, InterruptedException {
        int left = trials;
        for (int i = 1; left > 0; i++) {
            int perSession = Math.max(1, Math.min(left, TRIALS_AT_ONCE) / (ROOMS * SESSIONS_PER_ROOM));
            Path folder = work.resolve("pool-" + i);
            new InventedPool(ROOMS, SESSIONS_PER_ROOM, perSession, i).write(folder);
            server.contribute(root, folder);
            Files.delete(folder.resolve("trials.csv"));
            left -= perSession * ROOMS * SESSIONS_PER_ROOM;
        }
        return trials - left;
    }

    private static double export(BenchServer server, String form, Path file) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/trials?format=" + form))
                .build();
        long start = System.nanoTime();
        HttpResponse<Path> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofFile(file));
        if (answer.statusCode() != 200) {
            throw new IOException("the export answered " + answer.statusCode() + ": " + Files.readString(file));
        }
        return (System.nanoTime() - start) / 1e9;
    }

    private static void summary(BenchServer server) {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/trials/summary"))
                .build();
        double seconds = Stopwatch.median(
                4, () -> HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString()));
        Report.print("counts, distributions and quantiles of all trials: %.2f s; bound none", seconds);
    }
}
