package org.tableweather.server.web;

import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.function.Supplier;
import org.tableweather.schema.digest.Sha256;

/** Entity tags: what a client holds already is not sent, nor even made, again. */
public final class ETags {
    private ETags() {}

    /** The tag of a body: its SHA-256. */
    public static EntityTag ofContent(byte[] body) {
        return new EntityTag(Sha256.hex(body));
    }

    /**
     * Answers 304 when the client holds this state, otherwise what is made.
     *
     * @param request tells what the client holds
     * @param tag names the state and the form
     * @param fresh makes the answer
     */
    public static Response unlessHeld(Request request, EntityTag tag, Supplier<Response.ResponseBuilder> fresh) {
        Response.ResponseBuilder held = request.evaluatePreconditions(tag);
        Response.ResponseBuilder answer = held == null ? fresh.get() : held;
        return answer.tag(tag)
                .header("Cache-Control", "no-cache")
                .header("Vary", "Accept")
                .build();
    }
}
