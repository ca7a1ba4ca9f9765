package org.tableweather.server.logbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.tableweather.server.web.ETags;

/** The script that keeps the page for offline use, with the version of what it keeps: the digest of all of it. */
final class OfflineScript {
    private static final String ROOT = "/META-INF/resources";
    private static final String SCRIPT = "/offline/table-worker.js";
    private static final List<String> ASSETS = List.of(
            "/tableweather.css",
            "/tableweather.svg",
            "/assets/hand-over.js",
            "/assets/zip.js",
            "/assets/table/attempt.js",
            "/assets/table/climate.js",
            "/assets/table/drawing.js",
            "/assets/table/field.js",
            "/assets/table/finish.js",
            "/assets/table/folder.js",
            "/assets/table/logging.js",
            "/assets/table/numbers.js",
            "/assets/table/page.js",
            "/assets/table/setup.js",
            "/assets/table/shelf.js",
            "/assets/table/typing.js");

    private OfflineScript() {}

    /**
     * The script.
     *
     * @param page as it is rendered
     * @param definitions as they are answered
     */
    static byte[] of(String page, byte[] definitions) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.write(page.getBytes(StandardCharsets.UTF_8));
        all.write(definitions);
        for (String asset : ASSETS) {
            all.write(resource(ROOT + asset));
        }
        String version = ETags.ofContent(all.toByteArray()).getValue();
        String kept = ASSETS.stream().map(asset -> "'" + asset + "'").collect(Collectors.joining(", "));
        return new String(resource(SCRIPT), StandardCharsets.UTF_8)
                .replace("'VERSION'", "'" + version + "'")
                .replace("'ASSETS'", kept)
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = OfflineScript.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }
}
