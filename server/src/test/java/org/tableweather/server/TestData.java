package org.tableweather.server;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.DataFolderLock;
import org.tableweather.server.embedded.EmbeddedDatabase;

/** A data folder of its own with a real database in it, as the server's main method would make it. */
public final class TestData implements QuarkusTestResourceLifecycleManager {
    private Path root;
    private DataFolderLock lock;
    private EmbeddedDatabase database;

    @Override
    public Map<String, String> start() {
        try {
            root = Files.createTempDirectory("tableweather-test");
            DataFolder folder = DataFolder.at(root.resolve("data"));
            lock = DataFolderLock.take(folder);
            database = EmbeddedDatabase.start(folder);
            return Map.of(
                    "tableweather.data", folder.toString(),
                    "tableweather.db.url", database.url(),
                    "tableweather.db.user", EmbeddedDatabase.USER,
                    "tableweather.db.password", database.password());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void stop() {
        try {
            database.close();
            lock.close();
            Examples.delete(root);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
