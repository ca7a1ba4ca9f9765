package org.tableweather.server.catalogue;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.UncheckedIOException;
import org.tableweather.schema.record.SessionRecord;

/** Records as they are kept in a JSON column: times keep their offset, numbers their digits, absent fields are left out. */
final class RecordJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_ABSENT, JsonInclude.Include.NON_ABSENT))
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .disable(DeserializationFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE)
            .build();

    private RecordJson() {}

    static String write(Object schemaRecord) {
        try {
            return MAPPER.writeValueAsString(schemaRecord);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("records of the schema have a JSON form", e);
        }
    }

    /** Whether any text holds U+0000, which PostgreSQL cannot. */
    static boolean holdsNul(Object schemaRecord) {
        return holdsNul(MAPPER.<JsonNode>valueToTree(schemaRecord));
    }

    private static boolean holdsNul(JsonNode node) {
        if (node.isTextual()) {
            return node.textValue().indexOf(0) >= 0;
        }
        for (JsonNode child : node) {
            if (holdsNul(child)) {
                return true;
            }
        }
        return false;
    }

    static SessionRecord session(String json) {
        try {
            return MAPPER.readValue(json, SessionRecord.class);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("not a session that we stored", e);
        }
    }
}
