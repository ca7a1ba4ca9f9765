package org.tableweather.server.accounts;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Accounts over HTTP. */
@Path("/api/v1/accounts")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "accounts")
class AccountResource {
    private final Accounts accounts;
    private final Callers callers;

    AccountResource(Accounts accounts, Callers callers) {
        this.accounts = accounts;
        this.callers = callers;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @RolesAllowed(Scope.OPERATE_NAME)
    @Operation(summary = "Make an account", description = "Scope operate.")
    public Response create(@NotNull @Valid AccountRequest request) {
        AccountView made = accounts.create(callers.current(), request.name(), request.role());
        return Response.created(URI.create("/api/v1/accounts/" + made.id()))
                .entity(made)
                .build();
    }

    @GET
    @RolesAllowed(Scope.OPERATE_NAME)
    @Operation(summary = "All accounts", description = "Scope operate.")
    public Map<String, List<AccountView>> all() {
        return Map.of("accounts", accounts.all());
    }

    @GET
    @Path("/me")
    @Authenticated
    @Operation(summary = "Whose token this is, and what it may do")
    public Map<String, Object> me() {
        Caller caller = callers.current();
        return Map.of(
                "account", accounts.account(caller.accountId()),
                "token", caller.tokenId(),
                "scopes", caller.scopes().stream().sorted().toList(),
                "expiresAt", caller.tokenExpiresAt());
    }
}
