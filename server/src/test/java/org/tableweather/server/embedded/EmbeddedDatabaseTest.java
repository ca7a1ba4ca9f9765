package org.tableweather.server.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.datafolder.DataFolderInUse;
import org.tableweather.server.datafolder.DataFolderLock;

class EmbeddedDatabaseTest {
    @TempDir
    Path root;

    private static String ask(EmbeddedDatabase database, String sql) throws SQLException {
        return askAs(EmbeddedDatabase.USER, database, sql);
    }

    private static String askAs(String user, EmbeddedDatabase database, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(database.url(), user, database.password());
                Statement statement = connection.createStatement()) {
            if (!statement.execute(sql)) {
                return "";
            }
            try (ResultSet row = statement.getResultSet()) {
                row.next();
                return row.getString(1);
            }
        }
    }

    private static ProcessHandle postmaster(DataFolder folder) throws IOException {
        String pid =
                Files.readAllLines(folder.database().resolve("postmaster.pid")).get(0);
        return ProcessHandle.of(Long.parseLong(pid)).orElseThrow();
    }

    @Test
    void isDurableSecretAndOnLoopbackAlone() throws IOException, SQLException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            for (String setting : List.of("fsync", "full_page_writes", "synchronous_commit")) {
                assertThat(ask(database, "SHOW " + setting)).as(setting).isEqualTo("on");
            }
            assertThat(ask(database, "SHOW listen_addresses")).isEqualTo("127.0.0.1");
            assertThat(askAs("postgres", database, "SHOW unix_socket_directories"))
                    .isEmpty();
            assertThat(ask(database, "SELECT rolsuper FROM pg_roles WHERE rolname = current_user"))
                    .isEqualTo("f");
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.databasePassword())))
                    .isEqualTo("rw-------");
            for (String user : List.of("postgres", EmbeddedDatabase.USER)) {
                assertThatThrownBy(() -> DriverManager.getConnection(database.url(), user, "guess"))
                        .hasMessageContaining("password authentication failed");
            }
            assertThat(Files.readAllLines(folder.database().resolve("pg_hba.conf")).stream()
                            .filter(line -> !line.isBlank() && !line.startsWith("#")))
                    .allMatch(line -> line.endsWith("scram-sha-256"));
        }
    }

    @Test
    void keepsItsDataAndItsPasswordAndStopsWithIt() throws IOException, SQLException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        ProcessHandle process;
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            ask(database, "CREATE TABLE kept AS SELECT 42 AS value");
            process = postmaster(folder);
        }
        // gone, or waiting to be reaped by whoever adopts orphans here
        assertThat(process.info().command()).isEmpty();
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertThat(ask(database, "SELECT value FROM kept")).isEqualTo("42");
        }
    }

    @Test
    void endsADatabaseThatAKilledServerLeftOver() throws IOException, SQLException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        EmbeddedDatabase first = EmbeddedDatabase.start(folder);
        ask(first, "CREATE TABLE kept AS SELECT 42 AS value");
        ProcessHandle leftOver = postmaster(folder);
        // what the operating system does for a killed server: its locks are gone, its database is not
        Files.delete(folder.database().resolve("epg-lock"));
        try (EmbeddedDatabase second = EmbeddedDatabase.start(folder)) {
            assertThat(leftOver.info().command()).isEqualTo(Optional.empty());
            assertThat(ask(second, "SELECT value FROM kept")).isEqualTo("42");
        }
    }

    @Test
    void beginsAnewWhenTheFirstStartWasCutShort() throws IOException, SQLException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        Files.createDirectories(folder.database());
        Files.writeString(folder.database().resolve("PG_VERSION"), "18\n");
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertThat(ask(database, "SELECT 1")).isEqualTo("1");
        }
        assertThat(folder.root().resolve("pg-unfinished-1/PG_VERSION")).exists();
    }

    @Test
    void forgetsAProcessIdThatBelongsToAnotherProgram() throws IOException, SQLException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        EmbeddedDatabase.start(folder).close();
        Files.writeString(
                folder.database().resolve("postmaster.pid"),
                ProcessHandle.current().pid() + "\n" + folder.database() + "\n");
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertThat(ask(database, "SELECT 1")).isEqualTo("1");
        }
    }

    @Test
    void oneServerOnADataFolder() throws IOException {
        DataFolder folder = DataFolder.at(root.resolve("data"));
        Files.writeString(folder.serverFile(), "{\"pid\":1,\"port\":8080}");
        try (DataFolderLock lock = DataFolderLock.take(folder)) {
            assertThat(lock).isNotNull();
            assertThatThrownBy(() -> DataFolderLock.take(folder))
                    .isInstanceOf(DataFolderInUse.class)
                    .hasMessageContaining(folder.toString())
                    .hasMessageContaining("\"pid\":1")
                    .hasMessageContaining("TABLEWEATHER_DATA");
        }
        DataFolderLock.take(folder).close();
    }
}
