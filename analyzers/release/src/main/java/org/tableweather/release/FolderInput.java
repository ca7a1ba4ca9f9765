package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.schema.record.Contribution;

/**
 * Contribution folders and archives. A folder is packed for its identity, as it would be to be contributed: the SHA-256 of the
 * archive names it here and on a server alike.
 */
record FolderInput(List<Path> paths, LongConsumer progress) implements ReleaseInput {
    @Override
    public void read(Sink sink) throws IOException {
        long[] read = new long[2];
        for (Path path : paths) {
            read(path, sink, bytes -> {
                read[1] = bytes;
                progress.accept(read[0] + bytes);
            });
            read[0] += read[1];
            read[1] = 0;
        }
    }

    private static void read(Path path, Sink sink, LongConsumer progress) throws IOException {
        String sha256 = archiveSha256(path);
        try (ContributionSource source = ContributionSource.of(path, ArchiveLimits.defaults())) {
            ContributionReader.Result result = ContributionReader.create()
                    .withProgress(progress)
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            TrialSink.NONE,
                            (session, trials) -> sink.session(sha256, session, trials));
            if (result.report().isRefused() || result.contribution().isEmpty()) {
                throw new DataRefused(path, result.report());
            }
            sink.contribution(
                    contribution(result.contribution().get(), sha256, result.report()),
                    () -> Optional.of(ContributionSource.of(path, ArchiveLimits.defaults())));
        }
    }

    private static ReleasedContribution contribution(Contribution contribution, String sha256, CheckReport report) {
        return new ReleasedContribution(
                sha256,
                contribution.title(),
                contribution.licence(),
                contribution.contributor().name(),
                contribution.contributor().orcid(),
                contribution.invented().orElse(false),
                sha256,
                ReleaseJson.text(report),
                contribution.shots(),
                contribution.marks());
    }

    private static String archiveSha256(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            return Sha256.hex(path);
        }
        Path archive = Files.createTempFile("tableweather", ".zip");
        try {
            return HexFormat.of().formatHex(ContributionWriter.pack(path, archive));
        } finally {
            Files.deleteIfExists(archive);
        }
    }
}
