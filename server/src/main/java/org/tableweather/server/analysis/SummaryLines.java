package org.tableweather.server.analysis;

import jakarta.ws.rs.core.StreamingOutput;
import java.io.OutputStream;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** Summaries on the wire: one JSON object a line. */
final class SummaryLines {
    /** Their media type. */
    static final String NDJSON = "application/x-ndjson";

    private SummaryLines() {}

    static StreamingOutput of(Summaries<?> summaries) {
        return (OutputStream output) -> {
            for (SessionSummary<?> session : summaries.sessions()) {
                output.write(SummaryJson.write(session));
                output.write('\n');
            }
        };
    }
}
