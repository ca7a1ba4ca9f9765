package org.tableweather.server;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.DataFolderLock;

/**
 * Ends things in order: the application, then its database, then the lock.
 *
 * <p>The application's own exit handler runs beside the virtual machine's other shutdown hooks, so the database may end
 * there before the application has: this hook waits for the application first.
 */
final class CleanStop {
    private static final long PATIENCE_SECONDS = 60;

    private final DataFolder folder;
    private final Deque<Closeable> toClose = new ArrayDeque<>();
    private final CountDownLatch applicationEnded = new CountDownLatch(1);

    CleanStop(DataFolder folder, DataFolderLock lock) {
        this.folder = folder;
        toClose.push(lock);
        Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "tableweather-stop"));
    }

    /** Adds what must be closed before what was added earlier. */
    synchronized void thenClose(Closeable resource) {
        toClose.push(resource);
    }

    /** Called by the application when it has ended, in whatever way. */
    void applicationEnded(int exitCode) {
        applicationEnded.countDown();
        System.exit(exitCode);
    }

    private void stop() {
        try {
            if (!applicationEnded.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                System.err.println("the application did not end within " + PATIENCE_SECONDS + " s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        closeAll();
    }

    private synchronized void closeAll() {
        try {
            Files.deleteIfExists(folder.serverFile());
        } catch (IOException e) {
            System.err.println("cannot remove " + folder.serverFile() + ": " + e.getMessage());
        }
        while (!toClose.isEmpty()) {
            try {
                toClose.pop().close();
            } catch (IOException e) {
                System.err.println("not closed cleanly: " + e.getMessage());
            }
        }
    }
}
