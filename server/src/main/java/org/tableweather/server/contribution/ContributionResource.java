package org.tableweather.server.contribution;

import com.fasterxml.jackson.annotation.JsonRawValue;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
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
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.accounts.Callers;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;

/** Contributions over HTTP. */
@Path("/api/v1/contributions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "contributions")
class ContributionResource {
    /** Media type of an archive. */
    static final String ZIP = "application/zip";

    private final Incoming incoming;
    private final Contributions contributions;
    private final Register register;
    private final Callers callers;
    private final ObjectMapper json;

    ContributionResource(
            Incoming incoming, Contributions contributions, Register register, Callers callers, ObjectMapper json) {
        this.incoming = incoming;
        this.contributions = contributions;
        this.register = register;
        this.callers = callers;
        this.json = json;
    }

    /** A contribution with its check report. */
    record Decided(
            @JsonUnwrapped ContributionView contribution,
            @JsonRawValue String report) {}

    @POST
    @Consumes(ZIP)
    @RolesAllowed(Scope.CONTRIBUTE_NAME)
    @Operation(
            summary = "Contribute an archive",
            description = "Scope contribute. 201 when it is new and passed, 200 when the very same archive is here"
                    + " already, 422 with the report when the checks refuse it. Sending again is always safe.",
            operationId = "contribute")
    public Response contribute(InputStream archive, @HeaderParam("Content-Digest") String contentDigest)
            throws IOException {
        Optional<String> meant = ContentDigest.sha256(contentDigest);
        Incoming.Complete upload = incoming.take(archive);
        if (meant.isPresent() && !meant.get().equals(upload.sha256())) {
            Files.delete(upload.file());
            throw new Refusal(
                    ErrorCode.DIGEST_MISMATCH,
                    "the " + upload.bytes() + " bytes received have the SHA-256 " + upload.sha256()
                            + ", Content-Digest says " + meant.get() + ": send it again");
        }
        return answer(contributions.take(callers.current(), upload));
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed(Scope.CONTRIBUTE_NAME)
    @Operation(
            summary = "Contribute an archive that was uploaded in pieces",
            description = "Scope contribute. The pieces went to PATCH /api/v1/uploads/{sha256}.",
            operationId = "contributeUpload")
    public Response contributeUpload(@NotNull @Valid UploadReference upload) throws IOException {
        return answer(contributions.take(
                callers.current(), incoming.complete(callers.current().accountId(), upload.upload())));
    }

    private Response answer(Contributions.Outcome outcome) throws IOException {
        ContributionView contribution = outcome.contribution();
        URI self = URI.create("/api/v1/contributions/" + contribution.id());
        return switch (contribution.state()) {
            case REFUSED ->
                throw new Refusal(
                                ErrorCode.CONTRIBUTION_REFUSED,
                                "contribution " + contribution.id()
                                        + " breaks rules that refuse: the member report names file, row, column, value,"
                                        + " bound and remedy of each; correct them and send it again")
                        .with("contribution", contribution.id())
                        .with("report", json.readTree(outcome.report()));
            case WITHDRAWN ->
                throw new Refusal(
                                ErrorCode.WRONG_STATE,
                                "contribution " + contribution.id()
                                        + " with this very archive was withdrawn: change its title to contribute it anew")
                        .with("contribution", contribution.id());
            default ->
                (outcome.fresh() ? Response.created(self) : Response.ok().location(self))
                        .entity(new Decided(contribution, outcome.report()))
                        .build();
        };
    }

    @GET
    @Operation(summary = "Contributions, newest first", operationId = "contributions")
    public Response list(
            @QueryParam("state") String state,
            @QueryParam("sha256") String sha256,
            @QueryParam("after") String after,
            @QueryParam("limit") String limit,
            @Context UriInfo uri,
            @Context Request request) {
        KnownParameters.only(uri, "state", "sha256", "after", "limit");
        long before = after == null ? Long.MAX_VALUE : Page.number(after);
        int most = Page.limit(limit);
        List<ContributionView> rows = register.list(
                Optional.ofNullable(state).map(ContributionResource::state),
                Optional.ofNullable(sha256),
                before,
                most + 1);
        Page<ContributionView> page = Page.of(rows, most, row -> Long.toString(row.id()));
        return tagged(request, page.body("contributions"));
    }

    /** The same content has the same tag. */
    private Response tagged(Request request, Object content) {
        try {
            byte[] body = json.writeValueAsBytes(content);
            return ETags.unlessHeld(request, ETags.ofContent(body), () -> Response.ok(body));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("views are plain records", e);
        }
    }

    /** The state of this name; refused when there is none. */
    static State state(String text) {
        return Arrays.stream(State.values())
                .filter(state -> state.schemaName().equals(text))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ErrorCode.BAD_REQUEST,
                        "state = " + text + " is not one of "
                                + Arrays.stream(State.values())
                                        .map(State::schemaName)
                                        .collect(Collectors.joining(", "))
                                + ": choose one of them"));
    }

    @GET
    @Path("/{id: [0-9]{1,18}}")
    @Operation(summary = "One contribution", operationId = "contribution")
    public Response one(@PathParam("id") long id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        return tagged(request, register.one(id));
    }

    @GET
    @Path("/{id: [0-9]{1,18}}/report")
    @Operation(summary = "What the checks found", operationId = "report")
    public Response report(@PathParam("id") long id, @Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        byte[] report = register.report(id).getBytes(StandardCharsets.UTF_8);
        return ETags.unlessHeld(request, ETags.ofContent(report), () -> Response.ok(report));
    }

    @GET
    @Path("/{id: [0-9]{1,18}}/archive")
    @Produces({ZIP, MediaType.APPLICATION_JSON})
    @Operation(
            summary = "The archive, byte for byte",
            description =
                    "Takes 'Range: bytes=N-'. Where it tells a room's position more closely than 0.1 degrees, only"
                            + " its contributor and curators may have it.",
            operationId = "archive")
    public Response archive(
            @PathParam("id") long id,
            @HeaderParam("Range") String range,
            @Context UriInfo uri,
            @Context Request request) {
        KnownParameters.only(uri);
        String sha256 = register.archive(id, callers.ifAny());
        return ETags.unlessHeld(
                request,
                new EntityTag(sha256),
                () -> contributions.archive(sha256).answer(range));
    }

    @POST
    @Path("/{id: [0-9]{1,18}}/accept")
    @RolesAllowed(Scope.CURATE_NAME)
    @Operation(summary = "Publish a checked contribution", description = "Scope curate.", operationId = "accept")
    public ContributionView accept(@PathParam("id") long id) {
        return register.accept(callers.current(), id);
    }

    @POST
    @Path("/{id: [0-9]{1,18}}/withdraw")
    @RolesAllowed({Scope.CONTRIBUTE_NAME, Scope.CURATE_NAME})
    @Operation(
            summary = "Take a contribution back",
            description =
                    "An own one, or with the scope curate any. It is no longer pooled; what was released stays, and"
                            + " later releases name it with the day and the reason.",
            operationId = "withdraw")
    public ContributionView withdraw(
            @PathParam("id") long id,
            @QueryParam("reason")
                    @Size(max = 200, message = "longer than 200 characters: say it in fewer")
                    @Parameter(description = "why, in words; published")
                    String reason,
            @Context UriInfo uri) {
        KnownParameters.only(uri, "reason");
        return register.withdraw(callers.current(), id, reason == null ? "" : reason.strip());
    }
}
