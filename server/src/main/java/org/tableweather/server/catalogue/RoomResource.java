package org.tableweather.server.catalogue;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Form;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;

/** Rooms over HTTP. */
@Path("/api/v1/rooms")
@Tag(name = "catalogue")
class RoomResource {
    private final Rooms rooms;
    private final Catalogue catalogue;
    private final SavedQueries queries;

    RoomResource(Rooms rooms, Catalogue catalogue, SavedQueries queries) {
        this.rooms = rooms;
        this.catalogue = catalogue;
        this.queries = queries;
    }

    @GET
    @Produces({MediaType.APPLICATION_JSON, Form.CSV_TYPE})
    @Operation(summary = "Rooms with published sessions, by key", operationId = "rooms")
    public Response list(@Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri, CatalogueFilter.PARAMETERS);
        var query = queries.applied(uri.getQueryParameters());
        CatalogueFilter filter = CatalogueFilter.of(query);
        String after = query.containsKey("after") ? Page.key(query.getFirst("after")) : "";
        int limit = Page.limit(query.getFirst("limit"));
        Form form = Form.of(request, query.getFirst("format"));
        return ETags.unlessHeld(request, new EntityTag(catalogue.state() + form + queries.version(query)), () -> {
            if (form == Form.CSV) {
                List<RoomView> rows = rooms.list(filter, after, query.containsKey("limit") ? limit : 0);
                return Response.ok(CsvBody.of(RoomView.CSV_HEADER, rows.stream().map(RoomView::csv)), form.type());
            }
            Page<RoomView> page = Page.of(rooms.list(filter, after, limit + 1), limit, RoomView::key);
            return Response.ok(page.body("rooms"), form.type());
        });
    }

    @GET
    @Path("/{key: .+}")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(summary = "One room", operationId = "room")
    public Response one(
            @PathParam("key")
                    @Parameter(description = "room key, with its slash", example = "0000-0002-1825-0097/cellar")
                    String key,
            @Context UriInfo uri,
            @Context Request request) {
        KnownParameters.only(uri);
        MultivaluedHashMap<String, String> query = new MultivaluedHashMap<>();
        query.putSingle("room", key);
        return ETags.unlessHeld(
                request,
                new EntityTag(catalogue.state()),
                () -> rooms.list(CatalogueFilter.of(query), "", 1).stream()
                        .findFirst()
                        .map(Response::ok)
                        .orElseThrow(() -> new Refusal(
                                ErrorCode.NOT_FOUND,
                                "room " + key + " has no published session: GET /api/v1/rooms lists those that have")));
    }
}
