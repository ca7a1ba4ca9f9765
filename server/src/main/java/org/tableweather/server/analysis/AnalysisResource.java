package org.tableweather.server.analysis;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.ETags;

/** Analyses over HTTP: the very bytes that the command prints for the same sessions. */
@Path("/api/v1/analyses")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "analyses")
class AnalysisResource {
    private final Runs runs;
    private final Curves curves;
    private final RunCallers callers;

    AnalysisResource(Runs runs, Curves curves, RunCallers callers) {
        this.runs = runs;
        this.curves = curves;
        this.callers = callers;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask an analyzer about all that is published, and keep the answer",
            description = "200 with the run when the answer is kept already, 202 when it is being made; Location is the"
                    + " run's address, where its state, events and result are. The same analyzer, parameters and sessions"
                    + " are the same run.",
            operationId = "startRun")
    public Response start(@NotNull @Valid RunRequest question) {
        RunView run = runs.ask(question, callers.current());
        return (run.result().isPresent() ? Response.ok() : Response.accepted())
                .entity(run)
                .location(URI.create(RunView.path(run.id())))
                .build();
    }

    @GET
    @Path("/{id}")
    @Operation(
            summary = "Ask an analyzer about all that is published",
            description =
                    "The analyzer's parameters are the query's: GET /api/v1/analyzers/{id} lists them. A kept answer is"
                            + " given at once; another is made in its turn, and 429 says when too many wait.",
            operationId = "analyse")
    public Response ask(@PathParam("id") String id, @Context UriInfo uri, @Context Request request) {
        return answer(id, Chosen.of(uri.getQueryParameters()), request);
    }

    @GET
    @Path("/{id}/curve")
    @Operation(
            summary = "The pooled curve",
            description =
                    "The same answer without each room's own effects and the points of the plots: as small for ten"
                            + " thousand rooms as for ten.",
            operationId = "curve")
    public Response curve(@PathParam("id") String id, @Context UriInfo uri, @Context Request request) {
        Brief brief = curves.curve(id, Chosen.of(uri.getQueryParameters()), callers.current());
        return ETags.unlessHeld(request, brief.tag(), () -> Response.ok(brief.body()));
    }

    @POST
    @Path("/{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask an analyzer about all that is published",
            description = "The same with the parameters in the body.",
            operationId = "analyseByBody")
    public Response post(@PathParam("id") String id, @NotNull AnalysisRequest question, @Context Request request) {
        return Response.ok(answered(id, question.parameters()).body()).build();
    }

    private Response answer(String id, Map<String, String> parameters, Request request) {
        Answer answer = answered(id, parameters);
        return ETags.unlessHeld(request, answer.tag(), () -> Response.ok(answer.body()));
    }

    private Answer answered(String id, Map<String, String> parameters) {
        return runs.answer(id, parameters, callers.current());
    }
}
