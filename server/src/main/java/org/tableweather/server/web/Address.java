package org.tableweather.server.web;

import java.net.URI;
import java.net.URISyntaxException;

/** Paths of pages about things that people named: every name can stand in a link. */
public final class Address {
    private Address() {}

    /**
     * A path that ends in a name.
     *
     * @param page path of the page, such as {@code /rooms/}
     * @param name may hold any character; its slashes stay
     */
    public static String of(String page, String name) {
        try {
            return new URI(null, null, page + name, null).toASCIIString().replace("'", "%27");
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException(page + name + " is no path", e);
        }
    }
}
