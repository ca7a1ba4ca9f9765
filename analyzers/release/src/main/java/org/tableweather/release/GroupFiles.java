package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.digest.Sha256;

/**
 * The files of one room group: all that is needed to analyse it.
 *
 * @param release it belongs to
 * @param entries of the manifest
 */
public record GroupFiles(ReleaseFolder release, List<Manifest.FileEntry> entries) {

    /** The files of a group that an analysis reads, tables of sessions and of trials; none when there is no such group. */
    public static GroupFiles of(ReleaseFolder release, String roomGroup) {
        String folder = "/room_group=" + roomGroup + "/";
        return new GroupFiles(
                release,
                release.manifest().files().stream()
                        .filter(file -> file.feedsAnalysis() && file.path().contains(folder))
                        .toList());
    }

    /** How many bytes. */
    public long bytes() {
        return entries.stream().mapToLong(Manifest.FileEntry::bytes).sum();
    }

    /**
     * What is not as it was released: every byte is read and hashed.
     *
     * @return by file; empty when all is well
     * @throws IOException when the disk fails
     */
    public List<VerifyReport.Fault> faults() throws IOException {
        List<VerifyReport.Fault> faults = new ArrayList<>();
        for (Manifest.FileEntry file : entries) {
            Path path = release.path().resolve(file.path());
            if (!Files.isRegularFile(path)) {
                faults.add(new VerifyReport.Fault(
                        file.path(), VerifyReport.Problem.MISSING, "the manifest names it, and it is not there"));
                continue;
            }
            String sha256 = Sha256.hex(path);
            if (!sha256.equals(file.sha256())) {
                faults.add(new VerifyReport.Fault(
                        file.path(),
                        VerifyReport.Problem.CHANGED,
                        "its SHA-256 is " + sha256 + " instead of " + file.sha256()));
            }
        }
        return List.copyOf(faults);
    }
}
