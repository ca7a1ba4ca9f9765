package org.tableweather.server.analysis;

import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import jakarta.enterprise.context.ApplicationScoped;
import org.tableweather.server.accounts.Callers;

/** Tells who asks for an analysis in the request that is being answered. */
@ApplicationScoped
class RunCallers {
    private final Callers callers;
    private final CurrentVertxRequest request;

    RunCallers(Callers callers, CurrentVertxRequest request) {
        this.callers = callers;
        this.request = request;
    }

    RunCaller current() {
        return RunCaller.of(
                callers.ifAny(), request.getCurrent().request().remoteAddress().hostAddress());
    }
}
