package org.tableweather.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.tableweather.schema.json.ContributionJson;

/** Records as JSON text for people and programs, and back. */
final class JsonText {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .enable(SerializationFeature.INDENT_OUTPUT)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private JsonText() {}

    /** Indented JSON with a line end at the end. */
    static String of(Object value) {
        try {
            return MAPPER.writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("results are made of plain records", e);
        }
    }

    /** The same for records of the open format, where absent fields are left out and times are text. */
    static String ofSchema(Object value) {
        try {
            return ContributionJson.readable().writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("the format is made of plain records", e);
        }
    }

    /**
     * Parses.
     *
     * @throws IOException when it is not JSON
     */
    static JsonNode tree(byte[] json) throws IOException {
        return MAPPER.readTree(json);
    }

    /**
     * Parses into a record.
     *
     * @throws IOException when it does not fit
     */
    static <T> T as(JsonNode json, Class<T> type) throws IOException {
        return MAPPER.treeToValue(json, type);
    }
}
