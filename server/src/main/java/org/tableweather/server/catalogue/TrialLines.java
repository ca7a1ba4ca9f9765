package org.tableweather.server.catalogue;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Trials as one JSON object a line. */
@ApplicationScoped
class TrialLines {
    private static final byte[] LINE_END = "\n".getBytes(StandardCharsets.UTF_8);
    private static final int LEAST_AT_ONCE = 4000;
    private static final int MOST_AT_ONCE = 50_000;

    private final Trials trials;
    private final ObjectWriter json;

    TrialLines(Trials trials, ObjectMapper mapper) {
        this.trials = trials;
        this.json = mapper.writerFor(FoundTrial.class).without(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    }

    /**
     * Writes the rows.
     *
     * @param after where to go on
     * @param most rows
     */
    void write(
            CatalogueFilter filter,
            Trials.Position after,
            long most,
            OutputStream out,
            ClientStream.Listening listening)
            throws IOException {
        long[] left = {most};
        trials.read(filter, after, (int) Math.min(Math.max(most, LEAST_AT_ONCE), MOST_AT_ONCE), listening, trial -> {
            out.write(json.writeValueAsBytes(trial));
            out.write(LINE_END);
            return --left[0] > 0;
        });
    }
}
