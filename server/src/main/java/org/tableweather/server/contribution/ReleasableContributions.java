package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Shot;

/** What releases need to know of contributions. */
@ApplicationScoped
public class ReleasableContributions {

    /**
     * A contribution as a release names it.
     *
     * @param id its number here
     * @param sha256 of the archive
     * @param title in words
     * @param licence SPDX id
     * @param contributor the name they chose
     * @param invented whether the data are made up
     * @param report of the checks, as JSON
     * @param shots its own definitions
     * @param marks known points on the frames of its cameras
     */
    public record Releasable(
            long id,
            String sha256,
            Optional<String> title,
            String licence,
            String contributor,
            boolean invented,
            String report,
            List<Shot> shots,
            List<CameraMarks> marks) {}

    /**
     * What is left of one that was withdrawn.
     *
     * @param sha256 of the archive
     * @param date of the withdrawal, universal
     * @param reason as stated; may be empty
     */
    public record Withdrawn(String sha256, LocalDate date, String reason) {}

    private final Archives archives;

    ReleasableContributions(Archives archives) {
        this.archives = archives;
    }

    /**
     * These contributions, by number; accepted once, perhaps withdrawn since.
     *
     * @throws java.io.UncheckedIOException when a kept archive cannot be read
     */
    @Transactional
    public List<Releasable> of(Collection<Long> ids) {
        return StoredContribution.<StoredContribution>list("id in ?1 order by id", ids).stream()
                .map(this::releasable)
                .toList();
    }

    /**
     * The archive of one, as it was handed over.
     *
     * @return to be closed
     * @throws IOException when it is gone, or its bytes are not those that were handed over
     */
    public ContributionSource open(Releasable contribution) throws IOException {
        return archives.open(contribution.sha256());
    }

    /** All that were withdrawn until then, by number. */
    @Transactional
    public List<Withdrawn> withdrawnUntil(Instant time) {
        return StoredContribution.<StoredContribution>list("withdrawnAt <= ?1 order by id", time).stream()
                .map(StoredContribution::view)
                .map(view -> new Withdrawn(
                        view.sha256(),
                        LocalDate.ofInstant(view.withdrawnAt().orElseThrow(), ZoneOffset.UTC),
                        view.withdrawalReason().orElse("")))
                .toList();
    }

    private Releasable releasable(StoredContribution stored) {
        ContributionView view = stored.view();
        Contribution content = archives.contribution(view.sha256());
        return new Releasable(
                view.id(),
                view.sha256(),
                view.title(),
                view.licence().orElseThrow(),
                view.contributor().orElseThrow(),
                view.invented(),
                stored.report().orElse(""),
                content.shots(),
                content.marks());
    }
}
