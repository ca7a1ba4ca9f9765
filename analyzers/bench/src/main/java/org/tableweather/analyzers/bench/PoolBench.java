package org.tableweather.analyzers.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.tableweather.analyzers.bench.BenchOptions.Part;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;

/** Contribute, fit and analyse a large invented pool beside psql and R: see the README of this module. */
public final class PoolBench {
    private static final int ROOMS = 100;
    private static final int SESSIONS_PER_ROOM = 10;
    private static final int WARM_READS = 6;

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
     * Runs the benchmarks.
     *
     * @param args the repository's root, then the options of {@link BenchOptions}
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        BenchOptions options;
        try {
            options = BenchOptions.of(List.of(args).subList(1, args.length));
        } catch (IllegalArgumentException e) {
            System.err.println(e.getMessage());
            System.exit(2);
            return;
        }
        Report.print("%d processors; Java %s", Runtime.getRuntime().availableProcessors(), Runtime.version());
        run(
                new PoolBench(Path.of(args[0])),
                AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow(),
                options);
    }

    private static void run(PoolBench bench, Analyzer<?> analyzer, BenchOptions options)
            throws IOException, InterruptedException {
        clear(bench.work, options.keep() ? FilledServer.folder(bench.work) : bench.work.resolve("none"));
        for (Part part : options.parts()) {
            Report.print("%n== %s", part.name().toLowerCase(Locale.ROOT));
            switch (part) {
                case CONTRIBUTE -> bench.contribute(options);
                case ANSWER -> bench.analyze(analyzer, options);
                case PEERS -> PeerBench.run(bench.root, bench.work.resolve("peers"), options);
                case GROWTH -> GrowthBench.run(analyzer, options);
                case ADDED -> AddedSessionBench.run(analyzer, bench.work.resolve("added"), options);
                case SCAN -> ScanBench.run(analyzer, bench.root, bench.work.resolve("scan"), options);
                case LARGE -> LargeBench.run(bench.root, bench.work.resolve("large"), options);
                case RELEASE -> ReleaseBench.run(bench.root, bench.work.resolve("release"), options);
                case EXPORT -> ExportBench.run(bench.root, bench.work, options);
                case SERVED -> ServedBench.run(bench.root, bench.work, options);
            }
        }
    }

    /** The pools that both of the first parts read: made once. */
    private void prepare(BenchOptions options) throws IOException {
        if (!folders.isEmpty()) {
            return;
        }
        for (int i = 1; i <= options.repeats() + 1; i++) {
            Path folder = work.resolve("pool-" + i);
            new InventedPool(ROOMS, SESSIONS_PER_ROOM, options.trialsPerSession(), i).write(folder);
            folders.add(folder);
        }
        Report.print(
                "%,d trials in %,d sessions of %d rooms, trials.csv %.1f MB",
                options.trialsPerSession() * ROOMS * SESSIONS_PER_ROOM,
                ROOMS * SESSIONS_PER_ROOM,
                ROOMS,
                Files.size(folders.get(0).resolve("trials.csv")) / 1e6);
    }

    private void contribute(BenchOptions options) throws IOException, InterruptedException {
        prepare(options);
        try (BenchServer server = BenchServer.start(root, work.resolve("data"))) {
            int pairs = folders.size() - 1;
            double[] ours = new double[pairs];
            double[] peer = new double[pairs];
            for (int i = 0; i < pairs; i++) {
                peer[i] = server.copyBare(folders.get(i).resolve("trials.csv"), i);
                ours[i] = contribute(server, folders.get(i), "--no-check");
                Report.print("  contribute --no-check %.2f s, psql \\copy %.2f s", ours[i], peer[i]);
            }
            double copy = Measured.median(peer);
            ratio("contribute --no-check / psql \\copy", Measured.median(ours), copy, "at most 1.5");
            ratio(
                    "contribute, checked here as well / psql \\copy",
                    contribute(server, folders.get(pairs)),
                    copy,
                    "none");
        }
    }

    private double contribute(BenchServer server, Path folder, String... options)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                launcher.toString(),
                "contribute",
                folder.toString(),
                "--server",
                server.url(),
                "--token-file",
                server.tokenFile().toString()));
        command.addAll(List.of(options));
        return run(server.environment(), command.toArray(String[]::new)).seconds();
    }

    private <S> void analyze(Analyzer<S> analyzer, BenchOptions options) throws IOException, InterruptedException {
        prepare(options);
        double[] inProcess = new double[WARM_READS];
        Summaries<S> summaries = null;
        for (int i = 0; i < WARM_READS; i++) {
            long start = System.nanoTime();
            summaries = LocalSummaries.read(analyzer, List.of(folders.get(0)), bytes -> {})
                    .source();
            AnalysisRun.conclude(analyzer, summaries, Map.of());
            inProcess[i] = (System.nanoTime() - start) / 1e9;
        }
        double warm = Measured.median(Arrays.copyOfRange(inProcess, 1, WARM_READS));
        fit(analyzer, summaries, options.warmFits());
        double[] commands = new double[folders.size()];
        String output = "";
        for (int i = 0; i < commands.length; i++) {
            Measured command = run(
                    Map.of(),
                    launcher.toString(),
                    "analyze",
                    analyzer.info().id(),
                    "--data",
                    folders.get(0).toString(),
                    "--json");
            commands[i] = command.seconds();
            output = command.output();
        }
        double command = Measured.median(commands);
        Report.print(
                "folder to answer: %.2f s in a running JVM (median of %d; the first %.2f s), %.2f s as a command; slope %s",
                warm, WARM_READS - 1, inProcess[0], command, slope(output));
        if (options.withR()) {
            besideR(warm, command);
        }
    }

    private void besideR(double warm, double command) throws IOException, InterruptedException {
        Measured r = run(
                Map.of(),
                "Rscript",
                root.resolve("analyzers/bench/src/main/r/fit.R").toString(),
                folders.get(0).resolve("trials.csv").toString());
        Report.print("  R %.2f s; %s", r.seconds(), r.output().replace('\n', ' '));
        Report.print(
                "R / folder to answer: %.1f in a running JVM, %.1f as a command; bound at least 10",
                r.seconds() / warm, r.seconds() / command);
    }

    private <S> void fit(Analyzer<S> analyzer, Summaries<S> summaries, int times) {
        double warm = Stopwatch.median(times, () -> AnalysisRun.conclude(analyzer, summaries, Map.of()));
        Report.print("answer from summaries: %.4f s (median of %d, warm); bound 0.02", warm, times - times / 2);
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
        Report.print("%s: %.2f (%.2f s / %.2f s); bound %s", what, ours / peer, ours, peer, bound);
    }

    private static void clear(Path folder, Path kept) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> paths = Files.walk(folder)) {
                for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                    if (!path.startsWith(kept) && !kept.startsWith(path)) {
                        Files.delete(path);
                    }
                }
            }
        }
    }
}
