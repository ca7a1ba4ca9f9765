package org.tableweather.cli;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Which server, and with which right to write. */
final class ServerOptions {
    private static final String STANDARD = "http://127.0.0.1:8080";

    @Option(
            names = "--server",
            paramLabel = "URL",
            description = {"Address of the server; standard: TABLEWEATHER_SERVER, else", STANDARD})
    private String url;

    @Option(names = "--token", paramLabel = "TOKEN", description = "Your token; standard: TABLEWEATHER_TOKEN.")
    private String token;

    @Option(
            names = "--token-file",
            paramLabel = "FILE",
            description = "Read the token from this file: it stays out of the shell's history.")
    private Path tokenFile;

    /** Whether the command line names a server. */
    boolean isTyped() {
        return url != null;
    }

    /** Whether the command line or the environment names a server. */
    boolean isStated() {
        return isTyped() || environment("TABLEWEATHER_SERVER").isPresent();
    }

    /** A client of that server. */
    ServerClient client() throws IOException {
        String stated = Optional.ofNullable(url)
                .or(() -> environment("TABLEWEATHER_SERVER"))
                .orElse(STANDARD);
        return new ServerClient(address(stated), token());
    }

    private Optional<String> token() throws IOException {
        if (token != null) {
            return Optional.of(token.strip());
        }
        if (tokenFile != null) {
            return Optional.of(Files.readString(tokenFile).strip());
        }
        return environment("TABLEWEATHER_TOKEN");
    }

    private static Optional<String> environment(String name) {
        return Optional.ofNullable(System.getenv(name)).map(String::strip).filter(value -> !value.isEmpty());
    }

    private static URI address(String stated) {
        String whole = stated.contains("://") ? stated : "http://" + stated;
        try {
            URI address = new URI(whole.replaceAll("/+$", ""));
            boolean isHttp = "http".equals(address.getScheme()) || "https".equals(address.getScheme());
            if (isHttp && address.getHost() != null) {
                return address;
            }
        } catch (java.net.URISyntaxException e) {
            // told below
        }
        throw Failure.usage("--server " + stated + " is no address", "write it like " + STANDARD);
    }
}
