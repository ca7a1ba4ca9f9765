package org.tableweather.server.analysis;

import jakarta.ws.rs.core.EntityTag;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.server.web.ETags;

/**
 * An answer, and as it is sent.
 *
 * @param run the answer, for pages and pictures
 * @param body UTF-8 JSON; shared, never written to
 * @param tag of the body
 */
record Answer(AnalysisRun run, byte[] body, EntityTag tag) {

    /** A new one. */
    static Answer of(AnalysisRun run) {
        byte[] body = AnalysisJson.bytes(run);
        return new Answer(run, body, ETags.ofContent(body));
    }

    /** The one that these bytes are. */
    static Answer kept(byte[] body) {
        try {
            return new Answer(AnalysisJson.read(body), body, ETags.ofContent(body));
        } catch (IOException e) {
            throw new UncheckedIOException("a kept result is an analysis", e);
        }
    }
}
