package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.folder.TrialSink;

/** Contribution folders and archives on this machine, read with a progress bar. */
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
     * Checks and summarises.
     *
     * @throws Failure when the checks refuse a path; its findings are in the message
     * @throws IOException when a path cannot be read
     */
    static <S> LocalSummaries<S> summaries(Analyzer<S> analyzer, List<Path> paths, Subcommand command)
            throws IOException {
        for (Path path : paths) {
            mustExist(path);
        }
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
        for (String session : local.repeated()) {
            command.say("session " + session + " is there twice with the same content: counted once");
        }
        if (local.isRefused()) {
            throw Failure.refused(
                    "the checks refuse the data", "mend what is listed above; tableweather check shows all findings");
        }
        return local;
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
