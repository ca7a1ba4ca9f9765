package org.tableweather.server.catalogue;

import java.time.Instant;
import java.util.SortedMap;

/**
 * A filter under a name. A version never changes.
 *
 * @param name of all its versions
 * @param version from 1
 * @param owner name of the account that saved it
 * @param filter parameters and values
 * @param savedAt when
 */
record SavedQuery(String name, int version, String owner, SortedMap<String, String> filter, Instant savedAt) {

    /** Name and version, as the parameter {@code query} takes them. */
    String reference() {
        return name + "@" + version;
    }
}
