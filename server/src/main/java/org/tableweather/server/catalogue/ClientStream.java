package org.tableweather.server.catalogue;

import io.vertx.core.http.HttpServerResponse;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import org.jboss.logging.Logger;

/** A body that is written as it is found, and no longer than the client listens. */
final class ClientStream {
    private static final Logger LOG = Logger.getLogger(ClientStream.class);
    private static final int BUFFER = 1 << 16;

    private ClientStream() {}

    /** Writes a body. */
    @FunctionalInterface
    interface Body {
        void writeTo(OutputStream out, Listening listening) throws IOException;
    }

    /** Asked now and then while nothing is written: a client that has left is noticed only there. */
    @FunctionalInterface
    interface Listening {
        /** Of a body in memory. */
        Listening ALWAYS = () -> {};

        /** Throws when the client has left. */
        void check() throws IOException;
    }

    /**
     * A streamed body.
     *
     * @param response tells when the client has left
     */
    static StreamingOutput of(HttpServerResponse response, Body body) {
        return output -> {
            OutputStream out = new BufferedOutputStream(output, BUFFER);
            try {
                body.writeTo(out, () -> mustListen(response));
                out.flush();
            } catch (IOException e) {
                if (!response.closed()) {
                    throw e;
                }
                LOG.debug("the client has left", e);
            }
        };
    }

    /** Throws when the client has left. */
    static void mustListen(HttpServerResponse response) throws IOException {
        if (response.closed()) {
            throw new IOException("the client has left");
        }
    }
}
