package org.tableweather.server;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.server.datafolder.DataFolder;

/** What happens once the server answers: it says where, on standard output and in {@code server.json}. */
final class RunningServer implements QuarkusApplication {
    private final DataFolder folder;
    private final ObjectMapper json;
    private final String host;
    private final int port;

    RunningServer(
            DataFolder folder,
            ObjectMapper json,
            @ConfigProperty(name = "quarkus.http.host") String host,
            @ConfigProperty(name = "quarkus.http.port") int port) {
        this.folder = folder;
        this.json = json;
        this.host = host;
        this.port = port;
    }

    @Override
    public int run(String... arguments) throws IOException {
        String url = "http://" + reachable(host) + ":" + port;
        writeServerFile(url);
        System.out.println("Tableweather is ready at " + url + "/ (data in " + folder + ")");
        Quarkus.waitForExit();
        Files.deleteIfExists(folder.serverFile());
        return 0;
    }

    private void writeServerFile(String url) throws IOException {
        Map<String, Object> server = new LinkedHashMap<>();
        server.put("pid", ProcessHandle.current().pid());
        server.put("port", port);
        server.put("url", url);
        Path fresh = folder.serverFile().resolveSibling("server.json.new");
        Files.writeString(fresh, json.writeValueAsString(server) + "\n");
        Files.move(fresh, folder.serverFile(), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static String reachable(String host) {
        return host.equals("0.0.0.0") ? "127.0.0.1" : host;
    }
}
