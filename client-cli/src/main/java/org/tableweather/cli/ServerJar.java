package org.tableweather.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The packaged server beside this program, and how it is started. */
final class ServerJar {
    private static final String PROPERTY = "tableweather.server.jar";
    private static final String VARIABLE = "TABLEWEATHER_SERVER_JAR";

    private ServerJar() {}

    /**
     * The command that starts the server.
     *
     * @param data its data folder
     * @param host address to listen on
     * @param port to listen on
     * @throws Failure when the packaged server is not there
     */
    static List<String> command(Path data, String host, int port) {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                dataArgument(data),
                "-Dtableweather.host=" + host,
                "-Dtableweather.port=" + port,
                "-jar",
                location().toString());
    }

    /** The argument that names the data folder; it tells our server's process from others. */
    static String dataArgument(Path data) {
        return "-Dtableweather.data=" + data.toAbsolutePath().normalize();
    }

    private static Path location() {
        String stated = System.getProperty(PROPERTY, System.getenv().getOrDefault(VARIABLE, ""));
        if (stated.isEmpty() || !Files.isRegularFile(Path.of(stated))) {
            throw Failure.fault(
                    "the packaged server is not there" + (stated.isEmpty() ? "" : ": " + stated),
                    "start through client-cli/bin/tableweather, or name quarkus-run.jar in " + VARIABLE);
        }
        return Path.of(stated);
    }
}
