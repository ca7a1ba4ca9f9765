package org.tableweather.server.contribution;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.KnownParameters;

/** Checks without contributing. */
@Path("/api/v1/checks")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "contributions")
class CheckResource {
    private final ArchiveChecks checks;
    private final Senders senders;

    CheckResource(ArchiveChecks checks, Senders senders) {
        this.checks = checks;
        this.senders = senders;
    }

    @POST
    @Consumes(ContributionResource.ZIP)
    @Operation(
            summary = "Check an archive without keeping it",
            description =
                    "No token is needed. 200 with the report, whether it refuses or not; what only the pool can tell"
                            + " (a session that is here already, a room of another account) is found when it is contributed.",
            operationId = "check")
    public ArchiveChecks.Checked check(InputStream archive, @Context UriInfo uri) throws IOException {
        KnownParameters.only(uri);
        return checks.check(senders.current(), archive);
    }
}
