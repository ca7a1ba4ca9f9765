package org.tableweather.analyzers.host;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.digest.Sha256;

/**
 * Summaries held in memory, in the one order that every host uses, so that equal sessions give equal bits.
 *
 * @param <S> an analyzer's summary
 */
public final class Summaries<S> implements SummarySource<S> {
    private static final Comparator<SessionSummary<?>> ORDER = Comparator.<SessionSummary<?>, String>comparing(
                    SessionSummary::roomKey)
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

    private final List<SessionSummary<S>> sessions;
    private final String hash;

    private Summaries(List<SessionSummary<S>> sessions) {
        this.sessions = sessions;
        this.hash = hashOf(sessions);
    }

    /** These summaries, sorted. */
    public static <S> Summaries<S> of(Collection<SessionSummary<S>> sessions) {
        return new Summaries<>(sessions.stream().sorted(ORDER).toList());
    }

    @Override
    public List<SessionSummary<S>> sessions() {
        return sessions;
    }

    @Override
    public String hash() {
        return hash;
    }

    private static String hashOf(List<? extends SessionSummary<?>> sessions) {
        return hash(sessions.stream().map(SessionSummary::digest).toList());
    }

    /**
     * Names a set of sessions.
     *
     * @param digests of the sessions, in any order
     * @return {@code sha256:} and the hash of the sorted digests
     */
    public static String hash(Collection<String> digests) {
        MessageDigest sha256 = Sha256.begin();
        digests.stream().sorted().forEach(digest -> sha256.update((digest + "\n").getBytes(StandardCharsets.US_ASCII)));
        return "sha256:" + Sha256.hex(sha256);
    }
}
