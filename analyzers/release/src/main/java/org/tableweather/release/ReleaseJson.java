package org.tableweather.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import org.tableweather.schema.json.ContributionJson;

/** The JSON files of a release: indented, names in declared order, line ends as LF on every machine. */
final class ReleaseJson {
    private static final JsonMapper MAPPER = ContributionJson.readable();
    private static final DefaultIndenter INDENT = new DefaultIndenter("  ", "\n");
    private static final ObjectWriter WRITER =
            MAPPER.writer(new DefaultPrettyPrinter().withObjectIndenter(INDENT).withArrayIndenter(INDENT));

    private ReleaseJson() {}

    /** With a line end at the end. */
    static String text(Object value) {
        try {
            return WRITER.writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what a release says is made of plain records", e);
        }
    }

    /**
     * JSON from elsewhere, laid out as all of a release: indented, without what is null or empty; empty for an empty text.
     *
     * @throws IOException when it is no JSON
     */
    static String again(String json) throws IOException {
        try {
            return json.isBlank() ? "" : text(filled(MAPPER.readTree(json)));
        } catch (JsonProcessingException e) {
            throw new IOException("a check report is no JSON: " + e.getOriginalMessage(), e);
        }
    }

    private static JsonNode filled(JsonNode node) {
        if (node instanceof ObjectNode object) {
            object.properties().removeIf(field -> isNothing(field.getValue()));
        }
        node.forEach(ReleaseJson::filled);
        return node;
    }

    private static boolean isNothing(JsonNode node) {
        return node.isNull()
                || node.isContainerNode() && node.isEmpty()
                || node.isTextual() && node.textValue().isEmpty();
    }

    /** On one line. */
    static String line(Object value) {
        try {
            return MAPPER.writer().without(SerializationFeature.INDENT_OUTPUT).writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("what a release says is made of plain records", e);
        }
    }

    /**
     * Reads a record.
     *
     * @param where for the message
     * @throws IOException when it is none
     */
    static <T> T read(byte[] json, Class<T> type, String where) throws IOException {
        try {
            return MAPPER.readValue(json, type);
        } catch (JsonProcessingException e) {
            throw new IOException(where + " cannot be read: " + e.getOriginalMessage(), e);
        }
    }
}
