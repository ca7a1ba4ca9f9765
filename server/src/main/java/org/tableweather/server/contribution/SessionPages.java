package org.tableweather.server.contribution;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.server.web.KnownParameters;

/** One session for people: its climate with the attempts in it, its paths, its angles, what the checks say. */
@Path("/sessions/{key: .+}")
class SessionPages {
    private final SessionDossiers dossiers;

    SessionPages(SessionDossiers dossiers) {
        this.dossiers = dossiers;
    }

    record SessionPage(SessionPageView view) implements TemplateInstance {}

    @GET
    @Produces("text/html;charset=UTF-8")
    @Operation(hidden = true)
    public TemplateInstance session(@PathParam("key") String key, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return new SessionPage(SessionPageView.of(dossiers.of(key)));
    }
}
