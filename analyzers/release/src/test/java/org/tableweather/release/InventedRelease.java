package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.schema.record.Trial;

/**
 * A release of two invented contributions, and what went into it.
 *
 * @param folder of the release
 * @param contributions folders that it was built from
 * @param trials all of them
 */
record InventedRelease(Path folder, List<Path> contributions, List<Trial> trials) {

    static ReleaseFacts facts() {
        return new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
    }

    static InventedRelease in(Path work) throws IOException {
        List<Path> folders = List.of(
                InventedFolders.write(work.resolve("exact"), "Ingrid Invented", 59.9127),
                InventedFolders.write(work.resolve("coarse"), "Otto Invented", 59.9));
        List<Trial> trials = new ArrayList<>();
        for (Path folder : folders) {
            try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
                ContributionReader.create()
                        .read(
                                source,
                                ContributionReader.ContributionListener.NONE,
                                TrialSink.NONE,
                                (session, all) -> trials.addAll(all));
            }
        }
        Path folder = work.resolve("release-1");
        ReleaseBuilder.build(ReleaseInput.ofFolders(folders), facts(), folder);
        return new InventedRelease(folder, folders, List.copyOf(trials));
    }

    /** Every file below a folder with its bytes, by path. */
    static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(path).toString(), Files.readAllBytes(path));
            }
        }
        return files;
    }
}
