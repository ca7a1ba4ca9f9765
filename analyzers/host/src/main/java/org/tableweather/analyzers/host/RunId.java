package org.tableweather.analyzers.host;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Map;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.schema.digest.Sha256;

/**
 * Names an analysis by all that goes into it: SHA-256 over analyzer id, version, every parameter with its value, and the
 * hash of the sessions. The same inputs have the same id, and so must have the same bytes.
 */
public final class RunId {
    private RunId() {}

    /**
     * The id of a run.
     *
     * @param analyzer its id and version count
     * @param parameters complete: standard values filled in
     * @param datasetHash names the set of sessions
     * @return 64 hex digits
     */
    public static String of(AnalyzerInfo analyzer, Parameters parameters, String datasetHash) {
        return of(analyzer.id(), analyzer.version(), parameters.values(), datasetHash);
    }

    /** The same from plain values, as a client reads them. */
    public static String of(String analyzer, String version, Map<String, String> parameters, String datasetHash) {
        MessageDigest sha256 = Sha256.begin();
        add(sha256, analyzer);
        add(sha256, version);
        new TreeMap<>(parameters).forEach((name, value) -> {
            add(sha256, name);
            add(sha256, value);
        });
        add(sha256, datasetHash);
        return Sha256.hex(sha256);
    }

    // with its length before it, so that no two lists of texts run into the same bytes
    private static void add(MessageDigest sha256, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        sha256.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
        sha256.update(bytes);
    }
}
