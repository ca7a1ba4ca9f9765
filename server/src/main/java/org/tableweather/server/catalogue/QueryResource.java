package org.tableweather.server.catalogue;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.accounts.Callers;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;

/** Saved queries over HTTP. */
@Path("/api/v1/queries")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "catalogue")
class QueryResource {
    private final SavedQueries queries;
    private final Callers callers;

    QueryResource(SavedQueries queries, Callers callers) {
        this.queries = queries;
        this.callers = callers;
    }

    @GET
    @Operation(summary = "Saved queries by name, each as it is now", operationId = "queries")
    public Map<String, Object> list(@Context UriInfo uri) {
        KnownParameters.only(uri, "after", "limit");
        var query = uri.getQueryParameters();
        String after = query.containsKey("after") ? Page.key(query.getFirst("after")) : "";
        int limit = Page.limit(query.getFirst("limit"));
        return Page.of(queries.list(after, limit + 1), limit, SavedQuery::name).body("queries");
    }

    @GET
    @Path("/{name}")
    @Operation(
            summary = "One saved query",
            description = "A name for its last version, name@2 for its second one.",
            operationId = "query")
    public Response one(@PathParam("name") String name, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        SavedQuery saved = queries.find(name);
        return ETags.unlessHeld(request, new EntityTag(saved.reference()), () -> Response.ok(saved));
    }

    @PUT
    @Path("/{name}")
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed(Scope.CONTRIBUTE_NAME)
    @Operation(
            summary = "Save a filter under a name",
            description = "Scope contribute. 201 with the first version; 200 with the next one when the filter is"
                    + " another, with the last one when it is the same. Earlier versions stay. A name is of the account"
                    + " that used it first.",
            operationId = "saveQuery")
    public Response save(@PathParam("name") String name, @NotNull @Valid SavedQueryRequest request) {
        SavedQuery saved = queries.save(callers.current(), name, request.filter());
        return Response.status(saved.version() == 1 ? Response.Status.CREATED : Response.Status.OK)
                .tag(new EntityTag(saved.reference()))
                .entity(saved)
                .build();
    }

    @DELETE
    @Path("/{name}")
    @RolesAllowed({Scope.CONTRIBUTE_NAME, Scope.OPERATE_NAME})
    @Operation(
            summary = "Delete a query with all its versions",
            description = "An own one, or with the scope operate any. Its name stays its owner's.",
            operationId = "deleteQuery")
    public Response delete(@PathParam("name") String name) {
        queries.delete(callers.current(), name);
        return Response.noContent().build();
    }
}
