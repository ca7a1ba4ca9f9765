package org.tableweather.cluster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.GroupFiles;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleasedSummaries;
import org.tableweather.release.VerifyReport;

/**
 * One room group of a release, in a folder that every executor sees under the same path.
 *
 * @param folder of the release
 * @param manifestSha256 of the release that the driver has seen, hex
 * @param roomGroup which group
 */
public record GroupPartition(String folder, String manifestSha256, String roomGroup) implements SessionPartition {

    /** All groups of a release. */
    public static List<SessionPartition> of(ReleaseFolder release) {
        String folder = release.path().toAbsolutePath().normalize().toString();
        return release.roomGroups().stream()
                .<SessionPartition>map(
                        group -> new GroupPartition(folder, release.manifest().hash(), group))
                .toList();
    }

    @Override
    public String name() {
        return "room group " + roomGroup;
    }

    /** Reads the group after its files' SHA-256 were found to be those of the manifest. */
    @Override
    public <S> void summarise(Analyzer<S> analyzer, Consumer<SessionSummary<S>> sink)
            throws IOException, PartitionRefused {
        ReleaseFolder release = ReleaseFolder.open(Path.of(folder));
        if (!release.manifest().hash().equals(manifestSha256)) {
            throw new PartitionRefused(folder + " is another release on a worker (manifest.json has the SHA-256 "
                    + release.manifest().hash() + " there, " + manifestSha256
                    + " here): let every worker see the same folder");
        }
        for (VerifyReport.Fault fault : GroupFiles.of(release, roomGroup).faults()) {
            throw new PartitionRefused(
                    fault.path() + " of " + folder + ": " + fault.detail() + ": fetch the release anew");
        }
        ReleasedSummaries.ofGroup(analyzer, release, roomGroup, sink);
    }
}
