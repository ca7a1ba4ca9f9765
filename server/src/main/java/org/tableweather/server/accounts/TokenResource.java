package org.tableweather.server.accounts;

import io.quarkus.security.Authenticated;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Tokens over HTTP. */
@Path("/api/v1/tokens")
@Produces(MediaType.APPLICATION_JSON)
@Authenticated
@Tag(name = "accounts")
class TokenResource {
    private final Accounts accounts;
    private final Callers callers;

    TokenResource(Accounts accounts, Callers callers) {
        this.accounts = accounts;
        this.callers = callers;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Make a token",
            description = "Its secret is in the answer and nowhere else. With the scope operate for any account;"
                    + " otherwise for the own account, no wider and no longer than the token in use.")
    public Response issue(@NotNull @Valid TokenRequest request) {
        IssuedToken issued = accounts.issue(callers.current(), request);
        return Response.created(URI.create("/api/v1/tokens/" + issued.about().id()))
                .header("Cache-Control", "no-store")
                .entity(issued)
                .build();
    }

    @GET
    @Operation(summary = "The own tokens, without their secrets", description = "With the scope operate, everybody's.")
    public Map<String, List<TokenView>> tokens() {
        return Map.of("tokens", accounts.tokens(callers.current()));
    }

    @DELETE
    @Path("/{id: [0-9]{1,18}}")
    @Operation(summary = "End a token for good", description = "An own one, or with the scope operate any.")
    public Response revoke(@PathParam("id") long id) {
        accounts.revoke(callers.current(), id);
        return Response.noContent().build();
    }
}
