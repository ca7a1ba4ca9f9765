package org.tableweather.server.logbook;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;

/** The page for logging attempts, what it knows of the schema, and the script that opens it offline. */
@Path("/")
class LogbookPages {
    private static final String SCRIPT = "text/javascript;charset=UTF-8";

    private final byte[] definitions;
    private final Definitions known = Definitions.ofSchema();

    LogbookPages(ObjectMapper json) throws IOException {
        this.definitions = json.writeValueAsBytes(known);
    }

    record TablePage(Definitions known) implements TemplateInstance {}

    @GET
    @Path("table")
    @Produces("text/html;charset=UTF-8")
    @Operation(hidden = true)
    public TemplateInstance table(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new TablePage(known);
    }

    @GET
    @Path("table/definitions.json")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(hidden = true)
    public Response definitions(@Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        return ETags.unlessHeld(request, ETags.ofContent(definitions), () -> Response.ok(definitions));
    }

    /** At the root, so that its scope may be {@code /table}. */
    @GET
    @Path("table-worker.js")
    @Produces(SCRIPT)
    @Operation(hidden = true)
    public Response worker(@Context UriInfo uri, @Context Request request) throws IOException {
        KnownParameters.only(uri);
        byte[] script = OfflineScript.of(new TablePage(known).render(), definitions);
        return ETags.unlessHeld(request, ETags.ofContent(script), () -> Response.ok(script));
    }
}
