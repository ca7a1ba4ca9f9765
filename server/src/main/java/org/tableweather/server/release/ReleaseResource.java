package org.tableweather.server.release;

import io.quarkus.vertx.http.Uncompressed;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.release.Manifest;
import org.tableweather.server.accounts.Callers;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.analysis.FrozenAnalyses;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.RangedFile;

/** Releases over HTTP. */
@Path("/api/v1/releases")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "releases")
class ReleaseResource {
    private final Releases releases;
    private final FrozenAnalyses analyses;
    private final Callers callers;

    ReleaseResource(Releases releases, FrozenAnalyses analyses, Callers callers) {
        this.releases = releases;
        this.analyses = analyses;
        this.callers = callers;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed(Scope.OPERATE_NAME)
    @Operation(
            summary = "Freeze all that is accepted now into the next release",
            description = "Scope operate. 202: what goes in is fixed, its files are being written; GET the address in"
                    + " Location until its state is frozen. 409 while another one is being built.",
            operationId = "freeze")
    public Response freeze(@NotNull @Valid ReleaseRequest wanted) {
        ReleaseView release = releases.freeze(callers.current(), wanted.title());
        return Response.accepted(release)
                .location(URI.create(ReleaseView.path(release.release().number())))
                .build();
    }

    @GET
    @Operation(summary = "Releases, latest first", operationId = "releases")
    public Response list(@QueryParam("after") String after, @QueryParam("limit") String limit, @Context UriInfo uri) {
        KnownParameters.only(uri, "after", "limit");
        int most = Page.limit(limit);
        long before = after == null ? Long.MAX_VALUE : Page.number(after);
        Page<ReleaseView> page = Page.of(
                releases.list(before, most + 1),
                most,
                row -> Integer.toString(row.release().number()));
        return Response.ok(page.body("releases"))
                .header("Cache-Control", "no-store")
                .build();
    }

    @GET
    @Path("/{number: [0-9]{1,9}}")
    @Operation(summary = "One release", operationId = "release")
    public Response one(@PathParam("number") int number, @Context UriInfo uri) {
        KnownParameters.only(uri);
        return Response.ok(releases.view(number))
                .header("Cache-Control", "no-store")
                .build();
    }

    @GET
    @Path("/{number: [0-9]{1,9}}/files/{path: .+}")
    @Produces(MediaType.WILDCARD)
    @Uncompressed
    @Operation(
            summary = "A file of a release, byte for byte",
            description = "manifest.json lists them all with their SHA-256, which is the entity tag. Takes"
                    + " 'Range: bytes=N-'.",
            operationId = "releaseFile")
    public Response file(
            @PathParam("number") int number,
            @PathParam("path") @Parameter(example = "manifest.json") String path,
            @HeaderParam("Range") String range,
            @Context UriInfo uri,
            @Context Request request) {
        KnownParameters.only(uri);
        Manifest manifest = releases.frozen(number);
        FrozenFile file = FrozenFile.of(manifest, path);
        RangedFile answer = new RangedFile(releases.path(number).resolve(file.path()), file.mediaType());
        return ETags.unlessHeld(request, new EntityTag(file.sha256()), () -> answer.answer(range));
    }

    @GET
    @Path("/{number: [0-9]{1,9}}/analyses/{id}")
    @Operation(
            summary = "Ask an analyzer about exactly what a release holds",
            description = "The analyzer's parameters are the query's. The same bytes as from the release's folder.",
            operationId = "analyseRelease")
    public Response analyse(
            @PathParam("number") int number,
            @PathParam("id") @Parameter(example = "rebound-humidity") String id,
            @Context UriInfo uri,
            @Context Request request) {
        byte[] body = analyses.answer(id, uri.getQueryParameters(), releases.sessions(number));
        return ETags.unlessHeld(request, ETags.ofContent(body), () -> Response.ok(body));
    }
}
