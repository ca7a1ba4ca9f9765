package org.tableweather.analyzers.host;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Summaries as JSON: doubles are written in the shortest form that reads back to the same bits. */
public final class SummaryJson {
    // Java 17's own conversions take longer than all else that is done to a summary
    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
                    .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                    .build())
            .addModule(new Jdk8Module())
            .build();

    private SummaryJson() {}

    /** UTF-8 JSON of a summary. */
    public static byte[] write(Object summary) {
        try {
            return MAPPER.writeValueAsBytes(summary);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a summary must be a record that Jackson can write", e);
        }
    }

    /**
     * A summary from its JSON.
     *
     * @throws UncheckedIOException when it is not the JSON of such a summary
     */
    public static <S> S read(byte[] json, Class<S> type) {
        try {
            return MAPPER.readValue(json, type);
        } catch (IOException e) {
            throw new UncheckedIOException("not the summary of " + type.getName(), e);
        }
    }
}
