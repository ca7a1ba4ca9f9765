package org.tableweather.server.analysis;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;

/** The list of runs over HTTP. */
@Path("/api/v1/runs")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "runs")
class RunListResource {
    private final KeptRuns runs;

    RunListResource(KeptRuns runs) {
        this.runs = runs;
    }

    @GET
    @Operation(
            summary = "The runs that are kept, the latest first",
            description =
                    "How long a run is kept is the operator's setting. 'next' is the cursor of the page after, null on"
                            + " the last one.",
            operationId = "runs")
    @Parameter(name = "analyzer", in = ParameterIn.QUERY, description = "only those of this analyzer")
    @Parameter(name = "after", in = ParameterIn.QUERY, description = "'next' of the page before")
    @Parameter(
            name = "limit",
            in = ParameterIn.QUERY,
            description = "runs on a page, 1..1000",
            schema = @Schema(implementation = Integer.class))
    public Response list(@Context UriInfo uri) {
        KnownParameters.only(uri, "analyzer", "after", "limit");
        MultivaluedMap<String, String> query = uri.getQueryParameters();
        int limit = Page.limit(query.getFirst("limit"));
        KeptRuns.Position after =
                query.containsKey("after") ? position(query.getFirst("after")) : KeptRuns.Position.START;
        String analyzer = Optional.ofNullable(query.getFirst("analyzer")).orElse("");
        List<KeptRuns.Listed> rows = runs.list(analyzer, after, limit + 1);
        Page<KeptRuns.Listed> page = Page.of(rows, limit, run -> run.requestedAt() + " " + run.id());
        return Response.ok(page.body("runs"))
                .header("Cache-Control", "no-store")
                .build();
    }

    /** Where a list goes on; refused for a cursor that is none of ours. */
    static KeptRuns.Position position(String cursor) {
        String[] parts = Page.key(cursor).split(" ", -1);
        if (parts.length != 2) {
            throw Page.badCursor(cursor);
        }
        try {
            return new KeptRuns.Position(Instant.parse(parts[0]), parts[1]);
        } catch (DateTimeException e) {
            throw Page.badCursor(cursor);
        }
    }
}
