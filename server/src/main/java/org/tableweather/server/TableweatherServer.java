package org.tableweather.server;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.net.BindException;
import java.nio.file.Path;
import java.util.Optional;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.DataFolderLock;
import org.tableweather.server.embedded.EmbeddedDatabase;

/** Starts everything: the data folder's lock, the database unless an external one is named, the application. */
@QuarkusMain
public final class TableweatherServer {
    private static final String DATA = "tableweather.data";
    private static final String DATABASE_URL = "tableweather.db.url";

    private TableweatherServer() {}

    /**
     * Runs until the process is told to end.
     *
     * @param arguments none
     */
    public static void main(String... arguments) {
        try {
            DataFolder folder = DataFolder.at(Path.of(setting(DATA).orElse("./tableweather-data")));
            System.setProperty(DATA, folder.toString());
            DataFolderLock lock = DataFolderLock.take(folder);
            CleanStop stop = new CleanStop(folder, lock);
            if (setting(DATABASE_URL).isEmpty()) {
                startDatabase(folder, stop);
            }
            Quarkus.run(
                    RunningServer.class,
                    (exitCode, fault) -> {
                        tell(fault);
                        stop.applicationEnded(exitCode);
                    },
                    arguments);
        } catch (IOException e) {
            System.err.println("tableweather server: " + e.getMessage());
            System.exit(1);
        }
    }

    // with an exit handler of ours nobody else says why the application could not start
    private static void tell(Throwable fault) {
        if (fault == null) {
            return;
        }
        Throwable cause = fault;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (!(cause instanceof BindException)) {
            fault.printStackTrace();
        }
        System.err.println("tableweather server: " + cause.getMessage());
    }

    private static void startDatabase(DataFolder folder, CleanStop stop) throws IOException {
        EmbeddedDatabase database = EmbeddedDatabase.start(folder);
        stop.thenClose(database);
        System.setProperty(DATABASE_URL, database.url());
        System.setProperty("tableweather.db.user", EmbeddedDatabase.USER);
        System.setProperty("tableweather.db.password", database.password());
    }

    /** A system property, or the environment variable of the same name in capitals. */
    private static Optional<String> setting(String name) {
        String environment = name.toUpperCase(java.util.Locale.ROOT).replace('.', '_');
        return Optional.ofNullable(System.getProperty(name, System.getenv(environment)))
                .filter(value -> !value.isBlank());
    }
}
