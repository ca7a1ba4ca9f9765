package org.tableweather.analyzers.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;

/** Contribute, fit and analyse a large invented pool beside psql and R: see the README of this module. */
public final class PoolBench {
    private static final int ROOMS = 100;
    private static final int SESSIONS_PER_ROOM = 10;
    private static final int WARM_FITS = 60;

    private final Path root;
    private final Path work;
    private final Path launcher;
    private final List<Path> folders = new ArrayList<>();

    private PoolBench(Path root) {
        this.root = root;
        this.work = root.resolve("analyzers/bench/target/bench");
        this.launcher = root.resolve("client-cli/bin/tableweather");
    }

    /**
     * Runs all benchmarks.
     *
     * @param args the repository's root, then options: {@code --trials-per-session N}, {@code --repeats N},
     *     {@code --skip-r}
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        PoolBench bench = new PoolBench(Path.of(args[0]));
        List<String> options = List.of(args).subList(1, args.length);
        int trials = option(options, "--trials-per-session", 1000);
        int repeats = option(options, "--repeats", 3);
        bench.prepare(trials, repeats);
        print(
                "%,d trials in %,d sessions of %d rooms; %d processors; Java %s",
                trials * ROOMS * SESSIONS_PER_ROOM,
                ROOMS * SESSIONS_PER_ROOM,
                ROOMS,
                Runtime.getRuntime().availableProcessors(),
                Runtime.version());
        bench.contribute();
        bench.fit();
        bench.analyze(options.contains("--skip-r"));
    }

    private static int option(List<String> options, String name, int standard) {
        int at = options.indexOf(name);
        return at < 0 ? standard : Integer.parseInt(options.get(at + 1));
    }

    private void prepare(int trials, int repeats) throws IOException {
        clear(work);
        for (int i = 1; i <= repeats; i++) {
            Path folder = work.resolve("pool-" + i);
            new InventedPool(ROOMS, SESSIONS_PER_ROOM, trials, i).write(folder);
            folders.add(folder);
        }
        print("trials.csv: %.1f MB", Files.size(folders.get(0).resolve("trials.csv")) / 1e6);
    }

    private void contribute() throws IOException, InterruptedException {
        try (BenchServer server = BenchServer.start(root, work.resolve("data"))) {
            double[] ours = new double[folders.size()];
            double[] peer = new double[folders.size()];
            for (int i = 0; i < ours.length; i++) {
                peer[i] = server.copyBare(folders.get(i).resolve("trials.csv"), i);
                ours[i] = run(
                                server.environment(),
                                launcher.toString(),
                                "contribute",
                                folders.get(i).toString(),
                                "--server",
                                server.url(),
                                "--token-file",
                                server.tokenFile().toString())
                        .seconds();
                print("  contribute %.2f s, psql \\copy %.2f s", ours[i], peer[i]);
            }
            ratio("contribute / psql \\copy", Measured.median(ours), Measured.median(peer), "at most 2.5");
        }
    }

    private void fit() throws IOException {
        fit(AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow());
    }

    private <S> void fit(Analyzer<S> analyzer) throws IOException {
        Summaries<S> summaries = LocalSummaries.read(analyzer, List.of(folders.get(0)), bytes -> {})
                .source();
        double[] seconds = new double[WARM_FITS];
        for (int i = 0; i < WARM_FITS; i++) {
            long start = System.nanoTime();
            AnalysisRun.conclude(analyzer, summaries, Map.of());
            seconds[i] = (System.nanoTime() - start) / 1e9;
        }
        double warm = Measured.median(java.util.Arrays.copyOfRange(seconds, WARM_FITS / 2, WARM_FITS));
        print(
                "fit from summaries: %.4f s warm (median of %d), %.4f s the first time; bound 0.02",
                warm, WARM_FITS / 2, seconds[0]);
    }

    private void analyze(boolean skipR) throws IOException, InterruptedException {
        double[] ours = new double[folders.size()];
        Measured last = null;
        for (int i = 0; i < ours.length; i++) {
            last = run(
                    Map.of(),
                    launcher.toString(),
                    "analyze",
                    "rebound-humidity",
                    "--data",
                    folders.get(0).toString(),
                    "--json");
            ours[i] = last.seconds();
        }
        print("  analyze %.2f s; slope %s", Measured.median(ours), slope(last.output()));
        if (skipR) {
            return;
        }
        Measured r = run(
                Map.of(),
                "Rscript",
                root.resolve("analyzers/bench/src/main/r/fit.R").toString(),
                folders.get(0).resolve("trials.csv").toString());
        print("  R %.2f s; %s", r.seconds(), r.output().replace('\n', ' '));
        print(
                "R / analyze: %.1f (%.2f s / %.2f s); bound at least 10",
                r.seconds() / Measured.median(ours), r.seconds(), Measured.median(ours));
    }

    private Measured run(Map<String, String> environment, String... command) throws IOException, InterruptedException {
        return Measured.run(root, environment, List.of(command));
    }

    private static String slope(String json) throws IOException {
        JsonNode result = new ObjectMapper().readTree(json);
        for (JsonNode estimate : result.path("estimates")) {
            if (estimate.path("name").asText().equals("humidity")) {
                return estimate.path("value").asText() + ", criterion "
                        + result.path("fit").path("criterion").asText();
            }
        }
        return result.path("detail").asText("no slope");
    }

    private static void ratio(String what, double ours, double peer, String bound) {
        print("%s: %.2f (%.2f s / %.2f s); bound %s", what, ours / peer, ours, peer, bound);
    }

    private static void print(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }

    private static void clear(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> paths = Files.walk(folder)) {
                for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }
}
