package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleasedSummaries;
import org.tableweather.release.ReleasedTrials;

/** The trials of a release summarised by session, beside DuckDB's aggregation of the same files, on equally many threads. */
final class ScanBench {
    private static final String HEAP = "256m";
    private static final int SESSIONS_IN_ROOM = 10;
    private static final int TRIALS_IN_SESSION = 1000;
    /** What the pool has of the columns of a summary, as they are there. */
    private static final List<String> MEASURES = List.of(
            "(climate_rh_pct - 50) / 10",
            "((climate_rh_pct - 50) / 10) * ((climate_rh_pct - 50) / 10)",
            "(climate_temp_c - 21) / 5",
            "approach_angle_deg - 45",
            "approach_speed_mps - 2",
            "final_rebound_angle_deg",
            "landing_offset_dia");

    private ScanBench() {}

    static void run(Analyzer<?> analyzer, Path root, Path work, BenchOptions options)
            throws IOException, InterruptedException {
        Path release = options.release().orElse(work.resolve("release"));
        if (!ReleaseFolder.isRelease(release)) {
            build(work.resolve("pool"), release, options);
        }
        memory(root, release);
        try (Connection duckdb = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = duckdb.createStatement()) {
            for (int threads = 1; threads <= Runtime.getRuntime().availableProcessors(); threads *= 2) {
                statement.execute("SET threads = " + threads);
                besides(analyzer, release, threads, statement, options.repeats());
            }
        } catch (SQLException e) {
            throw new IOException("DuckDB failed: " + e.getMessage(), e);
        }
    }

    private static void build(Path folder, Path release, BenchOptions options) throws IOException {
        int rooms = Math.max(1, options.largeTrials() / (SESSIONS_IN_ROOM * TRIALS_IN_SESSION));
        new InventedPool(rooms, SESSIONS_IN_ROOM, TRIALS_IN_SESSION, 1).write(folder);
        ReleaseBuilder.build(
                ReleaseInput.ofFolders(List.of(folder)),
                new ReleaseFacts(1, "Invented pool", LocalDate.of(2026, 1, 1), Optional.empty(), List.of()),
                release);
    }

    private static void memory(Path root, Path release) throws IOException, InterruptedException {
        Measured scanned = Java.run(root, HEAP, FolderRelease.class, "scan", release.toString());
        Report.print(
                "scan: %s in %.1f s from the start of a JVM, %.0f MB at its peak; heap up to %s",
                scanned.output().strip(), scanned.seconds(), scanned.peakMegabytes(), HEAP);
    }

    private static void besides(Analyzer<?> analyzer, Path release, int threads, Statement duckdb, int repeats)
            throws IOException, SQLException {
        double[] ours = new double[repeats];
        double[] raw = new double[repeats];
        double[] centred = new double[repeats];
        for (int i = 0; i < repeats; i++) {
            raw[i] = Stopwatch.seconds(() -> counted(duckdb, query(release, false)));
            ours[i] = Stopwatch.seconds(() -> summaries(analyzer, release, threads));
            centred[i] = Stopwatch.seconds(() -> counted(duckdb, query(release, true)));
            Report.print("  ours %.2f s, DuckDB raw sums %.2f s, DuckDB centred %.2f s", ours[i], raw[i], centred[i]);
        }
        long rows = rows(summaries(analyzer, release, threads));
        if (rows != counted(duckdb, query(release, false))) {
            throw new IOException("the two did not see the same rows: nothing was compared");
        }
        double median = Measured.laterMedian(ours);
        Report.print(
                "scan of %,d trials into summaries / DuckDB, threads of each: %d: %.2f to raw sums, %.2f to centred ones; bound 1.25",
                rows, threads, median / Measured.laterMedian(raw), median / Measured.laterMedian(centred));
    }

    private static <S> List<SessionSummary<S>> summaries(Analyzer<S> analyzer, Path release, int threads)
            throws IOException {
        return ReleasedSummaries.read(analyzer, ReleasedTrials.at(release).orElseThrow(), threads, rows -> {});
    }

    private static long rows(List<? extends SessionSummary<?>> summaries) {
        return summaries.stream().mapToLong(SessionSummary::trials).sum();
    }

    private static long counted(Statement duckdb, String query) throws SQLException {
        try (ResultSet row = duckdb.executeQuery(query)) {
            long counted = 0;
            double sum = 0;
            while (row.next()) {
                counted += row.getLong(1);
                // every figure is fetched, as ours are made
                for (int column = 2; column <= row.getMetaData().getColumnCount(); column++) {
                    sum += row.getDouble(column);
                }
            }
            return Double.isNaN(sum) ? -1 : counted;
        }
    }

    /** Counts, means and cross-products of every pair per session and shot; raw sums lose digits that centred ones keep. */
    private static String query(Path release, boolean centred) {
        List<String> columns = new ArrayList<>();
        for (int i = 0; i < MEASURES.size(); i++) {
            columns.add(MEASURES.get(i) + " AS c" + i);
        }
        List<String> figures = new ArrayList<>(List.of("count(*)"));
        for (int i = 0; i < MEASURES.size(); i++) {
            figures.add("avg(c" + i + ")");
            for (int j = 0; j <= i; j++) {
                figures.add(centred ? "covar_pop(c" + i + ", c" + j + ")" : "sum(c" + i + " * c" + j + ")");
            }
        }
        return "SELECT " + String.join(", ", figures) + " FROM (SELECT session_digest, shot, "
                + String.join(", ", columns) + " FROM read_parquet('" + release.resolve("trials")
                + "/*/*/*.parquet')) GROUP BY session_digest, shot";
    }
}
