package org.tableweather.analyzers.host;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongConsumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.TrialSink;

/**
 * The summaries of contribution folders or archives on this machine: each is read once, checked and summarised on the
 * way.
 *
 * @param <S> the analyzer's summary
 * @param summaries of all sessions; a session met twice counts once
 * @param reports the check report of each path
 * @param repeated sessions left out because an equal one was there already
 */
public record LocalSummaries<S>(
        List<SessionSummary<S>> summaries, Map<Path, CheckReport> reports, List<String> repeated) {

    /**
     * Reads and summarises.
     *
     * @param analyzer whose summaries
     * @param paths folders or zip archives
     * @param progress told the bytes of trials read so far
     * @throws IOException when a path cannot be read
     */
    public static <S> LocalSummaries<S> read(Analyzer<S> analyzer, Collection<Path> paths, LongConsumer progress)
            throws IOException {
        Map<String, SessionSummary<S>> byDigest = new LinkedHashMap<>();
        Map<Path, CheckReport> reports = new LinkedHashMap<>();
        List<String> repeated = new ArrayList<>();
        for (Path path : paths) {
            Map<String, SessionSummary<S>> bySession = new LinkedHashMap<>();
            reports.put(path, readOne(analyzer, path, progress, bySession));
            for (SessionSummary<S> summary : bySession.values()) {
                if (byDigest.putIfAbsent(summary.digest(), summary) != null) {
                    repeated.add(summary.sessionKey());
                }
            }
        }
        return new LocalSummaries<>(List.copyOf(byDigest.values()), reports, repeated);
    }

    private static <S> CheckReport readOne(
            Analyzer<S> analyzer, Path path, LongConsumer progress, Map<String, SessionSummary<S>> into)
            throws IOException {
        try (ContributionSource source = ContributionSource.of(path, ArchiveLimits.defaults())) {
            return ContributionReader.create()
                    .withProgress(progress)
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            TrialSink.NONE,
                            (session, trials) -> into.put(
                                    session.sessionKey(),
                                    new SessionSummary<>(
                                            session.roomKey(),
                                            session.sessionKey(),
                                            session.digest(),
                                            session.invented(),
                                            trials.size(),
                                            analyzer.summarise(session, trials))))
                    .report();
        }
    }

    /**
     * These and others, a session met twice counted once.
     *
     * @param more of the same analyzer
     */
    public LocalSummaries<S> with(Collection<SessionSummary<S>> more) {
        Map<String, SessionSummary<S>> byDigest = new LinkedHashMap<>();
        summaries.forEach(summary -> byDigest.put(summary.digest(), summary));
        List<String> twice = new ArrayList<>(repeated);
        for (SessionSummary<S> summary : more) {
            if (byDigest.putIfAbsent(summary.digest(), summary) != null) {
                twice.add(summary.sessionKey());
            }
        }
        return new LocalSummaries<>(List.copyOf(byDigest.values()), reports, twice);
    }

    /** Whether any path was refused by the checks. */
    public boolean isRefused() {
        return reports.values().stream().anyMatch(CheckReport::isRefused);
    }

    /** The summaries in order, ready to conclude over. */
    public Summaries<S> source() {
        return Summaries.of(summaries);
    }
}
