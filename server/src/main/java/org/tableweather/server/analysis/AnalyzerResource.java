package org.tableweather.server.analysis;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;

/** Analyzers over HTTP. */
@Path("/api/v1/analyzers")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "analyses")
class AnalyzerResource {
    private final Analyzers analyzers;
    private final Analyses analyses;
    private final Catalogue catalogue;

    AnalyzerResource(Analyzers analyzers, Analyses analyses, Catalogue catalogue) {
        this.analyzers = analyzers;
        this.analyses = analyses;
        this.catalogue = catalogue;
    }

    @GET
    @Operation(summary = "What can be asked", operationId = "analyzers")
    public Map<String, List<AnalyzerInfo>> all(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return Map.of("analyzers", analyzers.infos());
    }

    @GET
    @Path("/{id}")
    @Operation(summary = "One analyzer: question, method, assumptions, parameters", operationId = "analyzer")
    public AnalyzerInfo one(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return analyzers.find(id).info();
    }

    @GET
    @Path("/{id}/summaries")
    @Produces({SummaryLines.NDJSON, MediaType.APPLICATION_JSON})
    @Operation(
            summary = "The kept summaries of all published sessions",
            description =
                    "One JSON object a line: roomKey, sessionKey, digest, invented, trials, summary. With them, and the"
                            + " same analyzer, a client can pool a room that it has not contributed.",
            operationId = "summaries")
    public Response summaries(@PathParam("id") String id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        String version = analyzers.find(id).info().summaryVersion();
        EntityTag tag = new EntityTag(catalogue.state() + "-" + version);
        return ETags.unlessHeld(
                request, tag, () -> Response.ok(SummaryLines.of(analyses.summaries(id)), SummaryLines.NDJSON));
    }
}
