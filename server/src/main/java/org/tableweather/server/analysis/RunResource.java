package org.tableweather.server.analysis;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import io.smallrye.mutiny.subscription.MultiEmitter;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestStreamElementType;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Refusal;

/** Runs over HTTP: analyses that are kept under a name made of what goes into them. */
@Path("/api/v1/runs/{id: [0-9a-f]{64}}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "runs")
class RunResource {
    private final Runs runs;
    private final Analyses analyses;
    private final RunEvents events;
    private final RunCallers callers;

    RunResource(Runs runs, Analyses analyses, RunEvents events, RunCallers callers) {
        this.runs = runs;
        this.analyses = analyses;
        this.events = events;
        this.callers = callers;
    }

    /**
     * The sessions that were recorded with a run.
     *
     * @param hash names the set
     * @param digests of the sessions, sorted
     * @param withdrawn those that are no longer published
     */
    record Sessions(String hash, List<String> digests, List<String> withdrawn) {}

    @GET
    @Operation(summary = "One run: state, inputs, attempts", operationId = "run")
    public Response one(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return Response.ok(runs.one(id)).header("Cache-Control", "no-store").build();
    }

    @DELETE
    @Operation(
            summary = "Cancel the attempt that waits or is being made",
            description =
                    "A kept result stays. 409 when nothing is on its way. What was started with a token is cancelled with a"
                            + " token of the same account, a curator's or an operator's. The work stops: at the next session, at the"
                            + " analyzer's next word of progress, at once where a plugin concludes.",
            operationId = "cancelRun")
    public RunView cancel(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return runs.cancel(id, callers.current());
    }

    @GET
    @Path("/result")
    @Operation(
            summary = "The kept result, byte for byte",
            description = "What the first attempt made; its SHA-256 is the entity tag. 409 while there is none.",
            operationId = "runResult")
    public Response result(@PathParam("id") String id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        byte[] result = runs.result(id);
        EntityTag tag = ETags.ofContent(result);
        return ETags.unlessHeld(request, tag, () -> Response.ok(result));
    }

    @POST
    @Path("/rerun")
    @Operation(
            summary = "Make it again, on the sessions that were recorded with it",
            description =
                    "202; the new attempt's sameBytes says whether it made what is kept. 409 when the analyzer has"
                            + " another version now, or recorded sessions were withdrawn.",
            operationId = "rerun")
    public Response rerun(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return Response.accepted(runs.again(id, callers.current()))
                .location(URI.create(RunView.path(id)))
                .build();
    }

    @GET
    @Path("/sessions")
    @Operation(summary = "The recorded set of sessions, by digest", operationId = "runSessions")
    public Sessions sessions(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        RunInputs inputs = runs.inputs(id);
        return new Sessions(inputs.datasetHash(), inputs.digests(), runs.withdrawn(inputs));
    }

    @GET
    @Path("/summaries")
    @Produces({SummaryLines.NDJSON, MediaType.APPLICATION_JSON})
    @Operation(
            summary = "The kept summaries of the recorded sessions",
            description =
                    "One JSON object a line, as of an analyzer's summaries. With them, and the same analyzer, anyone"
                            + " can make the result again. 409 as for a rerun.",
            operationId = "runSummaries")
    public Response summaries(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        RunInputs inputs = runs.inputs(id);
        analyses.mustBePossible(inputs);
        return Response.ok(SummaryLines.of(analyses.summaries(inputs, Progress.Listener.NONE)), SummaryLines.NDJSON)
                .build();
    }

    @GET
    @Path("/events")
    @Produces(MediaType.SERVER_SENT_EVENTS)
    @RestStreamElementType(MediaType.APPLICATION_JSON)
    @Blocking
    @Operation(
            summary = "The run at every change, as server-sent events",
            description = "The first event is the run as it stands; the stream ends when no attempt is on its way.",
            operationId = "runEvents")
    public Multi<RunView> events(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        runs.one(id);
        if (events.isFull()) {
            throw new Refusal(
                            ErrorCode.TOO_MANY_RUNS,
                            "too many watch already: ask " + RunView.path(id) + " now and then instead")
                    .withHeader("Retry-After", "10");
        }
        return Multi.createFrom()
                .<RunView>emitter(emitter -> watch(id, emitter))
                .runSubscriptionOn(Infrastructure.getDefaultWorkerPool());
    }

    private void watch(String id, MultiEmitter<? super RunView> emitter) {
        Consumer<RunView> watcher = run -> emit(run, emitter);
        emitter.onTermination(() -> events.remove(id, watcher));
        // first: what changes from here on is not missed
        events.add(id, watcher);
        watcher.accept(runs.one(id));
    }

    private static void emit(RunView run, MultiEmitter<? super RunView> emitter) {
        emitter.emit(run);
        if (!run.isActive()) {
            emitter.complete();
        }
    }
}
