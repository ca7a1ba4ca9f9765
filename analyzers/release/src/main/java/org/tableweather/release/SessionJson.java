package org.tableweather.release;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.SessionRecord;

/** A session with all it refers to, as JSON that reads back to the same record. */
final class SessionJson {
    private SessionJson() {}

    static String write(SessionRecord session) {
        try {
            return ContributionJson.mapper().writeValueAsString(session);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("records of the schema have a JSON form", e);
        }
    }

    /**
     * Reads a session.
     *
     * @param where for the message
     * @throws IOException when it is none
     */
    static SessionRecord read(String json, String where) throws IOException {
        try {
            return ContributionJson.mapper().readValue(json, SessionRecord.class);
        } catch (JsonProcessingException e) {
            throw new IOException(where + ": holds a session that cannot be read: " + e.getOriginalMessage(), e);
        }
    }
}
