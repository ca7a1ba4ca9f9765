package org.tableweather.server.embedded;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.Closeable;
import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Map;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.OwnerOnlyFile;
import org.tableweather.server.datafolder.Secret;

/** A running PostgreSQL in a data folder. The caller holds the folder's lock. */
public final class EmbeddedDatabase implements Closeable {
    /** The role that the server works as; not a superuser. */
    public static final String USER = "tableweather";

    private static final String DATABASE = "tableweather";
    private static final String INITIALISED = "tableweather-initialised";
    private static final Duration START_PATIENCE = Duration.ofSeconds(60);
    private static final Map<String, String> SETTINGS = Map.ofEntries(
            Map.entry("fsync", "on"),
            Map.entry("full_page_writes", "on"),
            Map.entry("synchronous_commit", "on"),
            Map.entry("listen_addresses", "127.0.0.1"),
            Map.entry("unix_socket_directories", ""),
            Map.entry("max_connections", "50"),
            Map.entry("shared_buffers", "256MB"),
            Map.entry("wal_buffers", "16MB"),
            Map.entry("max_wal_size", "2GB"),
            Map.entry("wal_level", "minimal"),
            Map.entry("max_wal_senders", "0"),
            Map.entry("jit", "off"),
            Map.entry("logging_collector", "on"),
            Map.entry("log_filename", "postgresql-%a.log"),
            Map.entry("log_truncate_on_rotation", "on"));

    private final EmbeddedPostgres postgres;
    private final Path cluster;
    private final String password;

    private EmbeddedDatabase(EmbeddedPostgres postgres, Path cluster, String password) {
        this.postgres = postgres;
        this.cluster = cluster;
        this.password = password;
    }

    /**
     * Starts the database, after ending one that a killed server left over.
     *
     * @param folder whose lock the caller holds
     * @throws IOException when it does not start; the message says where its log is
     */
    public static EmbeddedDatabase start(DataFolder folder) throws IOException {
        Path cluster = folder.database();
        Leftover.end(cluster);
        boolean fresh = !Files.exists(cluster.resolve(INITIALISED));
        if (fresh) {
            setAside(cluster);
            OwnerOnlyFile.write(folder.databasePassword(), Secret.random());
        }
        String password = OwnerOnlyFile.read(folder.databasePassword());
        EmbeddedDatabase database = new EmbeddedDatabase(launch(folder, password), cluster, password);
        if (fresh) {
            database.createRoleAndDatabase();
            Files.createFile(cluster.resolve(INITIALISED));
        }
        return database;
    }

    /** A first start that was cut short leaves half a cluster: keep it out of the way rather than delete it. */
    private static void setAside(Path cluster) throws IOException {
        int n = 1;
        while (Files.exists(cluster) && Files.exists(aside(cluster, n))) {
            n++;
        }
        if (Files.exists(cluster)) {
            Files.move(cluster, aside(cluster, n));
        }
    }

    private static Path aside(Path cluster, int n) {
        return cluster.resolveSibling(cluster.getFileName() + "-unfinished-" + n);
    }

    private static EmbeddedPostgres launch(DataFolder folder, String password) throws IOException {
        Redirect log = Redirect.appendTo(folder.databaseStartLog().toFile());
        EmbeddedPostgres.Builder builder = EmbeddedPostgres.builder()
                .setDataDirectory(folder.database())
                .setOverrideWorkingDirectory(folder.databasePrograms().toFile())
                .setCleanDataDirectory(false)
                .setRegisterShutdownHook(false)
                .setPGStartupWait(START_PATIENCE)
                .setLocaleConfig("auth", "scram-sha-256")
                .setLocaleConfig("pwfile", folder.databasePassword().toString())
                .setLocaleConfig("locale", "C")
                .setConnectConfig("password", password)
                .setOutputRedirector(log)
                .setErrorRedirector(log);
        SETTINGS.forEach(builder::setServerConfig);
        try {
            return builder.start();
        } catch (IOException | RuntimeException e) {
            throw new IOException(
                    "the embedded PostgreSQL did not start: read " + folder.databaseStartLog() + " and "
                            + folder.database().resolve("log") + "; " + e.getMessage(),
                    e);
        } finally {
            closeToOthers(folder.databasePrograms());
        }
    }

    /** The launcher makes its folder writable for every user. */
    private static void closeToOthers(Path programs) throws IOException {
        if (Files.exists(programs)) {
            Files.setPosixFilePermissions(programs, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    private void createRoleAndDatabase() throws IOException {
        // the password is base64: nothing in it to escape
        administer(
                "CREATE ROLE " + USER + " LOGIN PASSWORD '" + password + "'",
                "CREATE DATABASE " + DATABASE + " OWNER " + USER,
                "CHECKPOINT");
    }

    private void administer(String... statements) throws IOException {
        try (Connection connection = postgres.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        } catch (SQLException e) {
            throw new IOException("the embedded PostgreSQL refused its own administrator: " + e.getMessage(), e);
        }
    }

    /** The address of the server's own database. */
    public String url() {
        return "jdbc:postgresql://127.0.0.1:" + postgres.getPort() + "/" + DATABASE;
    }

    /** The password of {@link #USER}. */
    public String password() {
        return password;
    }

    /** Writes everything to disk and stops. Returns when the database has ended. */
    @Override
    public void close() throws IOException {
        try {
            // the launcher gives a stop five seconds; a checkpoint first leaves it little to do
            administer("CHECKPOINT");
        } finally {
            postgres.close();
            Leftover.await(cluster);
        }
    }
}
