package org.tableweather.server.catalogue;

import io.vertx.core.http.HttpServerResponse;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.Form;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;

/** Trials over HTTP. */
@Path("/api/v1/trials")
@Tag(name = "catalogue")
class TrialResource {
    private static final int LEAST_AT_ONCE = 4000;
    private static final int PAGES_AT_ONCE = 4;
    private static final List<Form> FORMS = List.of(Form.JSON, Form.CSV, Form.NDJSON, Form.PARQUET);

    private final Trials trials;
    private final TrialLines lines;
    private final TrialSummaries summaries;
    private final Catalogue catalogue;
    private final SavedQueries queries;

    TrialResource(
            Trials trials, TrialLines lines, TrialSummaries summaries, Catalogue catalogue, SavedQueries queries) {
        this.trials = trials;
        this.lines = lines;
        this.summaries = summaries;
        this.catalogue = catalogue;
        this.queries = queries;
    }

    /** Which rows of which filter. */
    private record Part(CatalogueFilter filter, Trials.Position after, long most) {}

    @GET
    @Produces({MediaType.APPLICATION_JSON, Form.CSV_TYPE, Form.NDJSON_TYPE, Form.PARQUET_TYPE})
    @Operation(
            summary = "Published trials, by session and position in the file",
            description = "JSON gives one page; the other forms give everything as a stream when no limit is given.",
            operationId = "trials")
    public Response list(@Context UriInfo uri, @Context Request request, @Context HttpServerResponse response) {
        KnownParameters.only(uri, CatalogueFilter.PARAMETERS);
        var query = queries.applied(uri.getQueryParameters());
        CatalogueFilter filter = CatalogueFilter.of(query);
        Trials.Position after = query.containsKey("after") ? position(query.getFirst("after")) : Trials.Position.START;
        int limit = Page.limit(query.getFirst("limit"));
        Form form = Form.of(request, query.getFirst("format"), FORMS);
        Part part = new Part(filter, after, query.containsKey("limit") ? limit : Long.MAX_VALUE);
        return ETags.unlessHeld(
                request,
                new EntityTag(catalogue.state() + form + queries.version(query)),
                () -> form == Form.JSON
                        ? Response.ok(page(filter, after, limit).body("trials"), form.type())
                        : Response.ok(stream(form, part, response), form.type()));
    }

    private StreamingOutput stream(Form form, Part part, HttpServerResponse response) {
        return ClientStream.of(
                response,
                switch (form) {
                    case CSV ->
                        (out, listening) ->
                                TrialCsv.write(trials, part.filter(), part.after(), part.most(), out, listening);
                    case PARQUET ->
                        (out, listening) -> TrialParquetBody.write(
                                trials, part.filter(), part.after(), part.most(), out, listening);
                    default ->
                        (out, listening) -> lines.write(part.filter(), part.after(), part.most(), out, listening);
                });
    }

    @GET
    @Path("/summary")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "How much there is of what a filter asks for",
            description =
                    "Counts by shot, kind, room, country and climate, and quantiles of what was measured, by shot: from"
                            + " all trials that pass, or from some 100,000 of them on pages drawn by lot, the same ones every"
                            + " time; responsesFrom says from how many.",
            operationId = "trialSummary")
    public Response summary(@Context UriInfo uri, @Context Request request, @Context HttpServerResponse response) {
        KnownParameters.only(uri, CatalogueFilter.FILTERS_AND_QUERY);
        var query = queries.applied(uri.getQueryParameters());
        CatalogueFilter filter = CatalogueFilter.of(query);
        return ETags.unlessHeld(
                request,
                new EntityTag(catalogue.state() + queries.version(query)),
                () -> Response.ok(summaries.of(filter, () -> ClientStream.mustListen(response))));
    }

    private Page<FoundTrial> page(CatalogueFilter filter, Trials.Position after, int limit) {
        List<FoundTrial> rows = new ArrayList<>();
        try {
            int atOnce = Math.max(LEAST_AT_ONCE, PAGES_AT_ONCE * limit);
            trials.read(filter, after, atOnce, ClientStream.Listening.ALWAYS, trial -> {
                rows.add(trial);
                return rows.size() <= limit;
            });
        } catch (IOException e) {
            throw new UncheckedIOException("a list can be added to", e);
        }
        return Page.of(rows, limit, row -> row.session() + "." + row.ordinal());
    }

    private static Trials.Position position(String cursor) {
        String key = Page.key(cursor);
        if (!key.matches("[0-9]{1,9}[.][0-9]{1,9}")) {
            throw Page.badCursor(cursor);
        }
        String[] parts = key.split("[.]");
        return new Trials.Position(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    }
}
