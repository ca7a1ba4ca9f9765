package org.tableweather.server.catalogue;

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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Form;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;

/** Sessions over HTTP. */
@Path("/api/v1/sessions")
@Tag(name = "catalogue")
class SessionResource {
    private final Sessions sessions;
    private final Catalogue catalogue;
    private final SavedQueries queries;

    SessionResource(Sessions sessions, Catalogue catalogue, SavedQueries queries) {
        this.sessions = sessions;
        this.catalogue = catalogue;
        this.queries = queries;
    }

    @GET
    @Produces({MediaType.APPLICATION_JSON, Form.CSV_TYPE})
    @Operation(
            summary = "Published sessions that may hold such trials, by number",
            description = "A session passes when its span of times and climates touches the one asked for.",
            operationId = "sessions")
    public Response list(@Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri, CatalogueFilter.PARAMETERS);
        var query = queries.applied(uri.getQueryParameters());
        CatalogueFilter filter = CatalogueFilter.of(query);
        long after = query.containsKey("after") ? Page.number(query.getFirst("after")) : 0;
        int limit = Page.limit(query.getFirst("limit"));
        Form form = Form.of(request, query.getFirst("format"));
        return ETags.unlessHeld(request, new EntityTag(catalogue.state() + form + queries.version(query)), () -> {
            if (form == Form.CSV) {
                List<SessionView> rows = sessions.list(filter, after, query.containsKey("limit") ? limit : 0);
                return Response.ok(
                        CsvBody.of(SessionView.CSV_HEADER, rows.stream().map(SessionView::csv)), form.type());
            }
            Page<SessionView> page =
                    Page.of(sessions.list(filter, after, limit + 1), limit, row -> Integer.toString(row.id()));
            return Response.ok(page.body("sessions"), form.type());
        });
    }

    @GET
    @Path("/{id: [0-9]{1,9}}")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(summary = "One session with all it refers to", operationId = "session")
    public Response one(@PathParam("id") int id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        return ETags.unlessHeld(
                request,
                new EntityTag(catalogue.state()),
                () -> sessions.find(id)
                        .map(Response::ok)
                        .orElseThrow(() -> new Refusal(
                                ErrorCode.NOT_FOUND,
                                "session " + id + " is not published: GET /api/v1/sessions lists those that are")));
    }
}
