package org.tableweather.server.analysis;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.core.EntityTag;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.tableweather.server.web.ETags;

/**
 * An answer without what grows with the rooms: each room's own effects, and the points of the plots. Its size does not depend on
 * the pool's.
 *
 * @param body UTF-8 JSON; shared, never written to
 * @param tag of the body
 */
record Brief(byte[] body, EntityTag tag) {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<String> LEFT_OUT = List.of("rooms", "plots");

    /** Of a whole answer. */
    static Brief of(Answer whole) {
        try {
            ObjectNode answer = (ObjectNode) JSON.readTree(whole.body());
            answer.remove(LEFT_OUT);
            byte[] body = JSON.writeValueAsBytes(answer);
            return new Brief(body, ETags.ofContent(body));
        } catch (IOException e) {
            throw new UncheckedIOException("an answer is JSON", e);
        }
    }
}
