package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;

/**
 * Checks an archive and keeps nothing of it. What only the pool can tell, a session that is there already or a room of
 * another account, is found when it is contributed.
 */
@ApplicationScoped
class ArchiveChecks {
    /** A folder that packs better than this is no list of measurements. */
    private static final int UNPACKED_PER_PACKED = 32;

    private final Incoming incoming;
    private final CheckPlaces places;
    private final Incoming.Most most;

    ArchiveChecks(
            Incoming incoming,
            CheckPlaces places,
            @ConfigProperty(name = "tableweather.checks.max-bytes") long maxBytes) {
        this.incoming = incoming;
        this.places = places;
        this.most = new Incoming.Most(maxBytes, "TABLEWEATHER_CHECKS_MAX_BYTES");
    }

    /**
     * What was found in an archive that is gone by now.
     *
     * @param sha256 of the archive
     * @param bytes its length
     * @param report of the checks
     */
    record Checked(String sha256, long bytes, CheckReport report) {}

    /**
     * Takes an archive to disk, reads it once, deletes it.
     *
     * @param caller what the bound for each caller counts by
     */
    Checked check(String caller, InputStream archive) throws IOException {
        return places.within(caller, () -> {
            Incoming.Complete upload = incoming.take(archive, most);
            try {
                return new Checked(upload.sha256(), upload.bytes(), report(upload.file()));
            } finally {
                Files.deleteIfExists(upload.file());
            }
        });
    }

    private CheckReport report(Path archive) throws IOException {
        ArchiveLimits usual = ArchiveLimits.defaults();
        ArchiveLimits limits =
                new ArchiveLimits(usual.maxEntries(), UNPACKED_PER_PACKED * most.bytes(), usual.maxRatio());
        try (ContributionSource source = ContributionSource.of(archive, limits)) {
            return ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            (session, run) -> {},
                            (session, trials) -> {})
                    .report();
        }
    }
}
