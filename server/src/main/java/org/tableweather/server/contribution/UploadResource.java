package org.tableweather.server.contribution;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.HEAD;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.accounts.Callers;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Uploads that may be interrupted and go on. Each account has its own. */
@Path("/api/v1/uploads/{sha256: [0-9a-f]{64}}")
@RolesAllowed(Scope.CONTRIBUTE_NAME)
@Tag(name = "contributions")
class UploadResource {
    /** Bytes held, or where a piece begins. */
    static final String OFFSET = "Upload-Offset";

    private static final String PIECE = "application/partial-upload";

    private final Incoming incoming;
    private final Callers callers;

    UploadResource(Incoming incoming, Callers callers) {
        this.incoming = incoming;
        this.callers = callers;
    }

    @HEAD
    @Operation(summary = "How many bytes are held", description = "0 before the first.", operationId = "uploadOffset")
    public Response offset(@PathParam("sha256") String sha256) throws IOException {
        return at(incoming.held(callers.current().accountId(), sha256));
    }

    @PATCH
    @Consumes(PIECE)
    @Operation(
            summary = "Send the next piece",
            description = "Upload-Offset says where it begins and must be the number of bytes held. What arrives before"
                    + " a break is kept.",
            operationId = "uploadPiece")
    public Response piece(@PathParam("sha256") String sha256, @HeaderParam(OFFSET) String offset, InputStream piece)
            throws IOException {
        if (offset == null || !offset.matches("[0-9]{1,18}")) {
            throw new Refusal(
                    ErrorCode.BAD_REQUEST,
                    OFFSET + " = " + offset + " is no number of bytes: send the number that HEAD answers");
        }
        long account = callers.current().accountId();
        return at(incoming.takePart(account, sha256, Long.parseLong(offset), piece));
    }

    @DELETE
    @Operation(summary = "Begin again", operationId = "uploadForget")
    public Response forget(@PathParam("sha256") String sha256) throws IOException {
        incoming.forget(callers.current().accountId(), sha256);
        return Response.noContent().build();
    }

    private Response at(long held) {
        return Response.noContent()
                .header(OFFSET, held)
                .header("Upload-Limit", "max-size=" + incoming.maxBytes())
                .header("Cache-Control", "no-store")
                .build();
    }
}
