package org.tableweather.server.release;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleasedContribution;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.contribution.ReleasableContributions;
import org.tableweather.server.contribution.ReleasableContributions.Releasable;

/**
 * The contributions of a release: trials as the database holds them, one session at a time; readings and marked points from the kept
 * archives. A contribution is named by its archive's
 * SHA-256, as it is when a release is built from folders.
 *
 * @param contributions that go in
 * @param sessions reads their sessions
 * @param archives opens their archives
 */
record StoredInput(List<Releasable> contributions, PublishedSessions sessions, ReleasableContributions archives)
        implements ReleaseInput {
    private static final String ORCID = "[0-9]{4}-[0-9]{4}-[0-9]{4}-[0-9]{3}[0-9X]";

    @Override
    public void read(Sink sink) throws IOException {
        try {
            for (Releasable contribution : contributions) {
                read(contribution, sink);
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void read(Releasable contribution, Sink sink) throws IOException {
        List<PublishedSession> ofIt = sessions.ofContributions(List.of(contribution.id()));
        sessions.read(ofIt, (id, session, trials) -> sink.session(contribution.sha256(), session, trials));
        ReleasedContribution released = new ReleasedContribution(
                contribution.sha256(),
                contribution.title(),
                contribution.licence(),
                contribution.contributor(),
                orcid(ofIt),
                contribution.invented(),
                contribution.sha256(),
                contribution.report(),
                contribution.shots(),
                contribution.marks());
        sink.contribution(released, () -> Optional.of(archives.open(contribution)));
    }

    /** A room's key begins with its contributor's ORCID iD, where there is one. */
    private static Optional<String> orcid(List<PublishedSession> sessions) {
        return sessions.stream()
                .map(session -> session.roomKey().substring(0, session.roomKey().indexOf('/')))
                .filter(key -> key.matches(ORCID))
                .findFirst();
    }
}
