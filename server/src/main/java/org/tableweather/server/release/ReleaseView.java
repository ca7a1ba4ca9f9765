package org.tableweather.server.release;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;
import org.tableweather.release.Manifest;

/**
 * A release as the public sees it.
 *
 * @param release number, title, date and state
 * @param totals how much it holds; empty until it is frozen
 * @param files where its files are, each under its path in the manifest
 * @param manifest path of the manifest
 */
record ReleaseView(
        @JsonUnwrapped StoredRelease release, Optional<Manifest.Totals> totals, String files, String manifest) {

    static ReleaseView of(StoredRelease release, Optional<Manifest> manifest) {
        String files = path(release.number()) + "/files/";
        return new ReleaseView(release, manifest.map(Manifest::totals), files, files + Manifest.FILE);
    }

    static String path(int number) {
        return "/api/v1/releases/" + number;
    }
}
