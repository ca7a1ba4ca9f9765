package org.tableweather.server.catalogue;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.Map;

/**
 * A published trial with where it belongs.
 *
 * @param room room key
 * @param session number of the session
 * @param sessionKey its name over all contributions
 * @param ordinal position in the file within the session, from 1
 * @param values what was measured, by name; the rest is left out
 */
@JsonPropertyOrder({"room", "session", "sessionKey", "ordinal"})
record FoundTrial(
        String room,
        int session,
        String sessionKey,
        int ordinal,
        @JsonAnyGetter Map<String, Object> values) {}
