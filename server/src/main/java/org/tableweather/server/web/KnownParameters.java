package org.tableweather.server.web;

import jakarta.ws.rs.core.UriInfo;
import java.util.List;

/** A misspelt filter would silently give too much: what an address does not take is refused. */
public final class KnownParameters {
    private KnownParameters() {}

    /**
     * Refuses any other query parameter.
     *
     * @param uri of the request
     * @param known names that the address takes
     */
    public static void only(UriInfo uri, String... known) {
        for (String name : uri.getQueryParameters().keySet()) {
            if (!List.of(known).contains(name)) {
                throw new Refusal(
                        ErrorCode.UNKNOWN_PARAMETER,
                        "parameter " + name + " is unknown at " + uri.getPath() + ": it takes "
                                + (known.length == 0 ? "none" : String.join(", ", known)));
            }
        }
    }
}
