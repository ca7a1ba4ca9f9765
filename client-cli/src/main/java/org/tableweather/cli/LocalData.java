package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.ReleasedSummaries;
import org.tableweather.release.ReleasedTrials;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.folder.TrialSink;

/** Contribution folders, archives and released trials on this machine, read with a progress bar. */
final class LocalData {
    private static final String TRIALS = "trials.csv";

    private LocalData() {}

    /**
     * Checks one folder or archive.
     *
     * @throws IOException when it cannot be read
     */
    static ContributionReader.Result check(Path path, Terminal terminal) throws IOException {
        mustExist(path);
        try (ContributionSource source = ContributionSource.of(path, ArchiveLimits.defaults());
                ProgressLine progress = ProgressLine.ofBytes(terminal, "checking", bytesOfTrials(path))) {
            return ContributionReader.create()
                    .withProgress(progress)
                    .read(source, ContributionReader.ContributionListener.NONE, TrialSink.NONE, SessionSink.NONE);
        }
    }

    /**
     * Checks and summarises; what is released was checked before and is compared with its manifest instead.
     *
     * @throws Failure when the checks refuse a path; its findings are in the message
     * @throws IOException when a path cannot be read, or a release is not as its manifest states
     */
    static <S> LocalSummaries<S> summaries(Analyzer<S> analyzer, List<Path> paths, Subcommand command)
            throws IOException {
        List<Path> contributions = new ArrayList<>();
        List<ReleasedTrials> released = new ArrayList<>();
        for (Path path : paths) {
            Optional<ReleasedTrials> trials = ReleasedTrials.at(path);
            trials.ifPresentOrElse(released::add, () -> contributions.add(path));
        }
        LocalSummaries<S> local = contributed(analyzer, contributions, command);
        for (ReleasedTrials trials : released) {
            local = local.with(ofRelease(analyzer, trials, command));
        }
        for (String session : local.repeated()) {
            command.say("session " + session + " is there twice with the same content: counted once");
        }
        tellDifferent(local, command);
        return local;
    }

    private static <S> LocalSummaries<S> contributed(Analyzer<S> analyzer, List<Path> paths, Subcommand command)
            throws IOException {
        LocalSummaries<S> local;
        try (ProgressLine progress = ProgressLine.ofBytes(Terminal.current(), "reading", bytesOfTrials(paths))) {
            local = LocalSummaries.read(analyzer, paths, progress);
        }
        for (Map.Entry<Path, CheckReport> entry : local.reports().entrySet()) {
            CheckReport report = entry.getValue();
            if (report.isRefused()) {
                command.say(FindingText.headline(entry.getKey().toString(), report));
                command.say(FindingText.refusals(report));
            } else if (FindingText.isDoubtful(report)) {
                command.say(
                        FindingText.headline(entry.getKey().toString(), report) + "; tableweather check tells them");
            }
        }
        if (local.isRefused()) {
            throw Failure.refused(
                    "the checks refuse the data", "mend what is listed above; tableweather check shows all findings");
        }
        return local;
    }

    private static <S> List<SessionSummary<S>> ofRelease(
            Analyzer<S> analyzer, ReleasedTrials trials, Subcommand command) throws IOException {
        if (trials.canHoldParts()) {
            command.say(trials.inWords() + ": a session that is not complete in it counts as what is there,"
                    + " and its other attempts look left out");
        }
        trials.mustBeUnchanged();
        try (ProgressLine progress = ProgressLine.ofCount(Terminal.current(), "reading trials", trials.rows())) {
            return ReleasedSummaries.read(analyzer, trials, progress);
        }
    }

    /** An older copy of a session, or a part of it, would count beside it. */
    private static void tellDifferent(LocalSummaries<?> local, Subcommand command) {
        Set<String> keys = new HashSet<>();
        for (SessionSummary<?> session : local.summaries()) {
            if (!keys.add(session.sessionKey())) {
                command.say("session " + session.sessionKey() + " is there twice with different content: both count."
                        + " Leave out the copy, or the part, that is not meant");
            }
        }
    }

    /** Ends early, kindly, when there is nothing at a path. */
    static void mustExist(Path path) throws IOException {
        if (!Files.exists(path)) {
            throw new NoSuchFileException(path.toString());
        }
    }

    /** How many bytes of trials there will be; −1 when that is not known. */
    static long bytesOfTrials(List<Path> paths) throws IOException {
        return paths.size() == 1 ? bytesOfTrials(paths.get(0)) : -1;
    }

    private static long bytesOfTrials(Path path) throws IOException {
        Path trials = path.resolve(TRIALS);
        return Files.isRegularFile(trials) ? Files.size(trials) : -1;
    }
}
