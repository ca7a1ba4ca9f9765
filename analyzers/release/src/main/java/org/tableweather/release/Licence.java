package org.tableweather.release;

import java.util.List;
import java.util.Set;

/**
 * An open licence.
 *
 * @param id SPDX id
 */
record Licence(String id) {
    /** Younger than the list of SPDX ids that version 1.2.0 of the Citation File Format knows. */
    private static final Set<String> UNKNOWN_TO_CITATION_FILES =
            Set.of("CDLA-Permissive-2.0", "DL-DE-BY-2.0", "DL-DE-ZERO-2.0");

    /** Those of a release, by id. */
    static List<Licence> of(Manifest manifest) {
        return manifest.contributions().stream()
                .map(Manifest.Member::licence)
                .distinct()
                .sorted()
                .map(Licence::new)
                .toList();
    }

    /** Where its text is. */
    String address() {
        return "https://spdx.org/licenses/" + id + ".html";
    }

    /** Whether a citation file may state it by its id. */
    boolean isKnownToCitationFiles() {
        return !UNKNOWN_TO_CITATION_FILES.contains(id);
    }
}
