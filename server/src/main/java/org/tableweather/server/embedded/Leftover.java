package org.tableweather.server.embedded;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;

/** A database that outlived its server: kill -9 of the server does not reach it. */
final class Leftover {
    private static final Logger LOG = Logger.getLogger(Leftover.class);
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final long POLL_MILLIS = 20;

    private Leftover() {}

    /**
     * Ends the database that runs on this cluster, if one does, and forgets a stale process id.
     *
     * @param cluster nobody else may be using it
     * @throws IOException when it does not end
     */
    static void end(Path cluster) throws IOException {
        Optional<ProcessHandle> postmaster = postmaster(cluster);
        if (postmaster.isPresent()) {
            LOG.infof(
                    "ending the database that a killed server left over, process %d",
                    postmaster.get().pid());
            postmaster.get().destroy();
            await(cluster);
        }
        // a recycled process id would keep PostgreSQL from starting
        Files.deleteIfExists(pidFile(cluster));
    }

    /**
     * Waits until the database on this cluster has ended. Looks again and again rather than at the process's exit: where
     * nothing reaps orphans, a process that has ended is still listed.
     *
     * @throws IOException when it does not end
     */
    static void await(Path cluster) throws IOException {
        long patienceEnds = System.nanoTime() + PATIENCE.toNanos();
        while (postmaster(cluster).isPresent()) {
            if (System.nanoTime() > patienceEnds) {
                throw new IOException("the database on " + cluster + " did not end within " + PATIENCE.toSeconds()
                        + " s: end the process named in " + pidFile(cluster) + ", then start again");
            }
            pause(cluster);
        }
    }

    private static void pause(Path cluster) throws IOException {
        try {
            Thread.sleep(POLL_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while the database on " + cluster + " ends", e);
        }
    }

    private static Optional<ProcessHandle> postmaster(Path cluster) throws IOException {
        if (!Files.exists(pidFile(cluster))) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(pidFile(cluster));
        if (lines.isEmpty() || !lines.get(0).matches("[0-9]{1,10}")) {
            return Optional.empty();
        }
        return ProcessHandle.of(Long.parseLong(lines.get(0))).filter(process -> isPostgresOn(process, cluster));
    }

    private static boolean isPostgresOn(ProcessHandle process, Path cluster) {
        boolean postgres = process.info()
                .command()
                .filter(command -> command.endsWith("/postgres"))
                .isPresent();
        return postgres && (namesIt(process, cluster) || worksIn(process, cluster));
    }

    private static boolean namesIt(ProcessHandle process, Path cluster) {
        return process.info()
                .arguments()
                .filter(arguments -> Arrays.asList(arguments).contains(cluster.toString()))
                .isPresent();
    }

    /** PostgreSQL's working directory is its cluster; Linux shows it. */
    private static boolean worksIn(ProcessHandle process, Path cluster) {
        try {
            return Path.of("/proc", Long.toString(process.pid()), "cwd")
                    .toRealPath()
                    .equals(cluster.toRealPath());
        } catch (IOException e) {
            return false;
        }
    }

    private static Path pidFile(Path cluster) {
        return cluster.resolve("postmaster.pid");
    }
}
