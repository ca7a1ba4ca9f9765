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
    private static final List<String> FORMS = List.of("csv", "ndjson", "parquet");

    private ExportBench() {}

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        try (FilledServer filled = FilledServer.start(root, work, options)) {
            BenchServer server = filled.server();
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
                    filled.trials(), copy / csv, copy, csv);
            for (String form : FORMS.subList(1, FORMS.size())) {
                double seconds = export(server, form, file);
                Report.print("as %s: %.2f s, %.0f MB; bound none", form, seconds, Files.size(file) / 1e6);
            }
            summary(server);
            Files.delete(file);
        }
    }

    private static double export(BenchServer server, String form, Path file) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/trials?format=" + form))
                .build();
        // a shorter one would leave the end of the one before
        Files.deleteIfExists(file);
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
