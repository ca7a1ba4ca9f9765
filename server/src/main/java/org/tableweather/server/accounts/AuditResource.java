package org.tableweather.server.accounts;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;

/** The audit trail over HTTP. */
@Path("/api/v1/audit")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "accounts")
class AuditResource {
    private final Accounts accounts;

    AuditResource(Accounts accounts) {
        this.accounts = accounts;
    }

    @GET
    @RolesAllowed(Scope.OPERATE_NAME)
    @Operation(summary = "Every write, newest first", description = "Scope operate.")
    public Map<String, Object> trail(
            @QueryParam("after") String after, @QueryParam("limit") String limit, @Context UriInfo uri) {
        KnownParameters.only(uri, "after", "limit");
        Optional<Long> before = Optional.ofNullable(after).map(Page::number);
        return accounts.auditTrail(before, Page.limit(limit)).body("entries");
    }
}
