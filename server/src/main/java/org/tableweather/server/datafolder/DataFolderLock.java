package org.tableweather.server.datafolder;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;

/** Held by the one server that runs on a data folder; the operating system lets go of it when the process ends in any way. */
public final class DataFolderLock implements Closeable {
    private final FileChannel channel;

    private DataFolderLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Takes the lock.
     *
     * @param folder to be locked
     * @throws DataFolderInUse when another process, or another server in this one, holds it
     * @throws IOException when the lock file cannot be written
     */
    public static DataFolderLock take(DataFolder folder) throws IOException {
        FileChannel channel = FileChannel.open(folder.lockFile(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        if (!locked(channel)) {
            channel.close();
            throw new DataFolderInUse(folder, holder(folder));
        }
        return new DataFolderLock(channel);
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            // this very process holds it already
            return false;
        }
    }

    private static String holder(DataFolder folder) throws IOException {
        return Files.exists(folder.serverFile())
                ? " " + Files.readString(folder.serverFile()).strip()
                : "";
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
