package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A server with a large catalogue of 10,000 rooms with two sessions each, contributed in ten pieces. It is filled once for all parts that
 * ask it, and kept in its folder.
 *
 * @param server running
 * @param trials that it holds
 */
record FilledServer(BenchServer server, long trials) implements AutoCloseable {
    private static final int PIECES = 10;
    private static final int ROOMS = 1000;
    private static final int SESSIONS_PER_ROOM = 2;

    /** Where it lies within the benchmarks' folder. */
    static Path folder(Path work) {
        return work.resolve("filled");
    }

    /** Starts it, filled. */
    static FilledServer start(Path root, Path work, BenchOptions options) throws IOException, InterruptedException {
        Path folder = folder(work);
        Files.createDirectories(folder);
        int perSession = Math.max(1, options.exportTrials() / (PIECES * ROOMS * SESSIONS_PER_ROOM));
        long trials = (long) perSession * PIECES * ROOMS * SESSIONS_PER_ROOM;
        Path mark = folder.resolve("holds-" + trials);
        Files.deleteIfExists(folder.resolve("data/server.json"));
        BenchServer server = BenchServer.start(root, folder.resolve("data"));
        try {
            if (!Files.exists(mark)) {
                fill(root, server, folder, perSession);
                Files.createFile(mark);
            }
            return new FilledServer(server, trials);
        } catch (IOException | InterruptedException | RuntimeException e) {
            server.close();
            throw e;
        }
    }

    private static void fill(Path root, BenchServer server, Path work, int perSession)
            throws IOException, InterruptedException {
        for (int i = 1; i <= PIECES; i++) {
            Path pool = work.resolve("pool-" + i);
            new InventedPool(ROOMS, SESSIONS_PER_ROOM, perSession, i).write(pool);
            server.contribute(root, pool);
            Files.delete(pool.resolve("trials.csv"));
            Files.delete(pool.resolve("contribution.json"));
            Files.delete(pool);
        }
    }

    @Override
    public void close() {
        server.close();
    }
}
