package org.tableweather.server.contribution;

import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import jakarta.enterprise.context.ApplicationScoped;
import org.tableweather.server.web.ClientAddress;

/** Tells from where the request comes that is being answered. */
@ApplicationScoped
class Senders {
    private final CurrentVertxRequest request;

    Senders(CurrentVertxRequest request) {
        this.request = request;
    }

    /** What bounds for each caller count by. */
    String current() {
        return ClientAddress.network(address());
    }

    /** The address itself. */
    String address() {
        return request.getCurrent().request().remoteAddress().hostAddress();
    }
}
