package org.tableweather.server.contribution;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.UncheckedIOException;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;

/** The plots of one session as data. */
@Path("/api/v1/sessions/{id: [0-9]{1,9}}/plots")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "catalogue")
class SessionPlotResource {
    private final SessionDossiers dossiers;
    private final ObjectMapper json;

    SessionPlotResource(SessionDossiers dossiers, ObjectMapper json) {
        this.dossiers = dossiers;
        this.json = json;
    }

    /**
     * The plots.
     *
     * @param plots named and laid out as those of an analysis
     */
    record Plots(List<Plot> plots) {}

    @GET
    @Operation(
            summary = "The plots of a session as data",
            description = "Its log and the climate at each attempt over time, and the angle off the last rail at each"
                    + " attempt; named and laid out as the plots of an analysis.",
            operationId = "sessionPlots")
    public Response plots(@PathParam("id") int id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        try {
            byte[] body = json.writeValueAsBytes(new Plots(SessionPlots.of(dossiers.of(id))));
            return ETags.unlessHeld(request, ETags.ofContent(body), () -> Response.ok(body));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("plots are plain records", e);
        }
    }
}
