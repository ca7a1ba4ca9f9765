package org.tableweather.server.release;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.jboss.logging.Logger;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.Tombstone;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.contribution.ReleasableContributions;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/**
 * Makes releases. What goes in is fixed in one transaction when a release is asked for; its files are written in the
 * background into a folder that appears under its number when it is complete. A server that ends in between writes them
 * anew at its next start, from the same contributions.
 */
@ApplicationScoped
class Releases {
    private static final Logger LOG = Logger.getLogger(Releases.class);

    private static final int MANIFESTS = 16;

    private final Map<Integer, Manifest> manifests = new LinkedHashMap<>(MANIFESTS, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, Manifest> eldest) {
            return size() > MANIFESTS;
        }
    };

    private final StoredReleases stored;
    private final ReleasableContributions contributions;
    private final PublishedSessions sessions;
    private final DataFolder folder;
    private final ManagedExecutor executor;

    Releases(
            StoredReleases stored,
            ReleasableContributions contributions,
            PublishedSessions sessions,
            DataFolder folder,
            ManagedExecutor executor) {
        this.stored = stored;
        this.contributions = contributions;
        this.sessions = sessions;
        this.folder = folder;
        this.executor = executor;
    }

    void onStart(@Observes StartupEvent event) {
        for (StoredRelease release : stored.building()) {
            LOG.infof("release %d was being built at the last end: building it anew", release.number());
            executor.execute(() -> build(release));
        }
    }

    /** Fixes what goes in, and has it built. */
    ReleaseView freeze(Caller caller, String title) {
        int number = stored.begin(caller, title);
        executor.execute(() -> build(find(number)));
        return view(number);
    }

    private void build(StoredRelease release) {
        int number = release.number();
        try {
            // what an end in the middle left: complete, but not known to be
            ReleaseBuilder.discard(path(number));
            Manifest manifest = ReleaseBuilder.build(input(number), facts(release), path(number));
            stored.frozen(number, manifest.hash());
            LOG.infof("release %d is frozen: %s", number, manifest.hash());
        } catch (IOException | RuntimeException e) {
            LOG.errorf(e, "release %d cannot be built", number);
            stored.failed(number, String.valueOf(e.getMessage()));
        }
    }

    private StoredInput input(int number) {
        return new StoredInput(contributions.of(stored.contributions(number)), sessions, contributions);
    }

    private ReleaseFacts facts(StoredRelease release) throws IOException {
        Optional<StoredRelease> before = stored.frozenBefore(release.number());
        Optional<Manifest> previous = before.isEmpty() ? Optional.empty() : Optional.of(manifest(before.get()));
        List<Tombstone> tombstones = contributions.withdrawnUntil(release.requestedAt()).stream()
                .map(withdrawn -> new Tombstone(withdrawn.sha256(), withdrawn.date(), withdrawn.reason()))
                .toList();
        return new ReleaseFacts(release.number(), release.title(), release.date(), previous, tombstones);
    }

    /** Latest first. */
    List<ReleaseView> list(long before, int limit) {
        return stored.list(before, limit).stream().map(this::view).toList();
    }

    ReleaseView view(int number) {
        return view(find(number));
    }

    private ReleaseView view(StoredRelease release) {
        return ReleaseView.of(
                release, release.state() == ReleaseState.FROZEN ? Optional.of(manifest(release)) : Optional.empty());
    }

    /**
     * The manifest of a complete release.
     *
     * @throws Refusal when there is none, or it is not complete
     */
    Manifest frozen(int number) {
        StoredRelease release = find(number);
        if (release.state() != ReleaseState.FROZEN) {
            throw new Refusal(
                    ErrorCode.WRONG_STATE,
                    "release " + number + " is " + release.state().schemaName() + ": its files can be had once it is"
                            + " frozen");
        }
        return manifest(release);
    }

    /** Every session of a complete release, withdrawn since or not. */
    List<PublishedSession> sessions(int number) {
        frozen(number);
        return sessions.ofContributions(stored.contributions(number));
    }

    Path path(int number) {
        return folder.releases().resolve(Integer.toString(number));
    }

    // a frozen release never changes
    private Manifest manifest(StoredRelease release) {
        synchronized (manifests) {
            return manifests.computeIfAbsent(release.number(), this::readManifest);
        }
    }

    private Manifest readManifest(int number) {
        try {
            return ReleaseFolder.open(path(number)).manifest();
        } catch (IOException e) {
            throw new UncheckedIOException("release " + number + " is not on disk", e);
        }
    }

    private StoredRelease find(int number) {
        return stored.find(number)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND, "release " + number + " does not exist: GET /api/v1/releases lists them"));
    }
}
