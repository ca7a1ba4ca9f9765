package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntFunction;

/**
 * The pooled curve of a large catalogue, asked for 50 times a second on a fixed schedule: a request is sent when it is due, however many
 * are still without answer, and its time counts from when it was due. So a slow answer delays none of those after it, and waiting counts.
 */
final class ServedBench {
    private static final int PER_SECOND = 50;
    private static final int CHOICES = 8;
    private static final String ANSWER = "/api/v1/analyses/rebound-humidity";
    private static final String CURVE = ANSWER + "/curve";

    private final BenchServer server;
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private ServedBench(BenchServer server) {
        this.server = server;
    }

    static void run(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        try (FilledServer filled = FilledServer.start(root, work, options)) {
            ServedBench bench = new ServedBench(filled.server());
            Report.print(
                    "%,d trials; first answer, summaries made or read anew: %.2f s",
                    filled.trials(), bench.once(CURVE + "?curve_from_pct=29"));
            Report.print(
                    "one answer made anew from summaries in memory: %.3f s (median of 5); bound none",
                    bench.anew(new double[5]));
            for (int i = 0; i < CHOICES; i++) {
                bench.once(choice(i));
            }
            bench.once(CURVE);
            int seconds = options.servedSeconds();
            bench.ask("the same curve", seconds, PER_SECOND, i -> CURVE);
            bench.ask(
                    CHOICES + " choices of parameters in turn, kept answers",
                    seconds,
                    PER_SECOND,
                    i -> choice(i % CHOICES));
            bench.ask("choices that were never made before", seconds, 1, ServedBench::fresh);
            bench.ask(
                    "the whole answer, each room's effects and all points of the plots with it",
                    seconds,
                    1,
                    i -> ANSWER);
        }
    }

    /** One of a few choices. */
    private static String choice(int number) {
        return CURVE + "?curve_from_pct=" + (30 + number);
    }

    /** A choice that nobody made before. */
    private static String fresh(int number) {
        return CURVE + "?curve_from_pct=" + (20 + number / 1000.0);
    }

    private double anew(double[] seconds) throws IOException, InterruptedException {
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = once(fresh(5000 + i));
        }
        return Measured.median(seconds);
    }

    private double once(String path) throws IOException, InterruptedException {
        long start = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request(path), HttpResponse.BodyHandlers.ofByteArray());
        if (answer.statusCode() != 200) {
            throw new IOException(path + " answered " + answer.statusCode() + ": " + new String(answer.body()));
        }
        return (System.nanoTime() - start) / 1e9;
    }

    private HttpRequest request(String path) {
        return HttpRequest.newBuilder(URI.create(server.url() + path)).build();
    }

    private void ask(String what, int seconds, int perSecond, IntFunction<String> path) {
        int warm = 2 * perSecond;
        int n = warm + seconds * perSecond;
        long interval = TimeUnit.SECONDS.toNanos(1) / perSecond;
        List<CompletableFuture<Double>> answers = new ArrayList<>(n);
        long start = System.nanoTime() + interval;
        for (int i = 0; i < n; i++) {
            long due = start + i * interval;
            for (long now = System.nanoTime(); now < due; now = System.nanoTime()) {
                LockSupport.parkNanos(due - now);
            }
            answers.add(client.sendAsync(request(path.apply(i)), HttpResponse.BodyHandlers.ofByteArray())
                    .handle((answer, failure) -> failure == null && answer.statusCode() == 200
                            ? (System.nanoTime() - due) / 1e6
                            : Double.POSITIVE_INFINITY));
        }
        double[] millis = answers.stream().mapToDouble(CompletableFuture::join).toArray();
        print(what, perSecond, Arrays.copyOfRange(millis, warm, n));
    }

    private static void print(String what, int perSecond, double[] millis) {
        Arrays.sort(millis);
        long failed =
                Arrays.stream(millis).filter(time -> !Double.isFinite(time)).count();
        Report.print(
                "%s, %d a second: p50 %.1f ms, p99 %.1f ms, slowest %.1f ms of %,d, %d failed; bound %s",
                what,
                perSecond,
                quantile(millis, 0.5),
                quantile(millis, 0.99),
                millis[millis.length - 1],
                millis.length,
                failed,
                perSecond == PER_SECOND ? "p50 below 10 ms, p99 below 50 ms" : "none");
    }

    /** The smallest value that at least this share does not exceed. */
    static double quantile(double[] sorted, double share) {
        return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
    }
}
