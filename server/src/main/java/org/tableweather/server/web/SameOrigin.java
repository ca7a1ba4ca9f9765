package org.tableweather.server.web;

import jakarta.ws.rs.core.HttpHeaders;
import java.net.URI;
import java.util.Optional;

/**
 * A form of ours may do something; one that another site made its visitor send may not. Browsers tell where a form came from by
 * Sec-Fetch-Site, and over plain HTTP by Origin; what tells neither is no form of ours.
 */
public final class SameOrigin {
    private SameOrigin() {}

    /**
     * Refuses a form that does not come from a page of this server.
     *
     * @param headers of the request
     * @throws Refusal with {@link ErrorCode#OTHER_SITE}
     * @source RFC6454
     */
    public static void required(HttpHeaders headers) {
        boolean ours = header(headers, "Sec-Fetch-Site")
                .map("same-origin"::equals)
                .orElseGet(() -> isOurs(header(headers, "Origin"), header(headers, "Host")));
        if (!ours) {
            throw new Refusal(
                    ErrorCode.OTHER_SITE,
                    "the form was not sent by a page of this server: open the page here and send it again; programs ask"
                            + " under /api/v1");
        }
    }

    private static boolean isOurs(Optional<String> origin, Optional<String> host) {
        try {
            return origin.isPresent()
                    && host.isPresent()
                    && host.get().equalsIgnoreCase(URI.create(origin.get()).getAuthority());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private static Optional<String> header(HttpHeaders headers, String name) {
        return Optional.ofNullable(headers.getHeaderString(name));
    }
}
