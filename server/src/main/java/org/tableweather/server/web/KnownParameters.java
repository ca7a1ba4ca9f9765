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
        List<String> all = List.of(known);
        for (String name : uri.getQueryParameters().keySet()) {
            if (!all.contains(name)) {
                throw new Refusal(
                        ErrorCode.UNKNOWN_PARAMETER,
                        "parameter " + name + " is unknown at " + uri.getPath() + meant(name, all) + ": it takes "
                                + (known.length == 0 ? "none" : String.join(", ", known)));
            }
        }
    }

    private static String meant(String name, List<String> known) {
        return NearestName.of(name, known)
                .map(nearest -> ", did you mean " + nearest + "?")
                .orElse("");
    }
}
