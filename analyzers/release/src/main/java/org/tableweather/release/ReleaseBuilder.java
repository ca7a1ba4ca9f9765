package org.tableweather.release;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Freezes contributions into a release. Equal contributions and facts give equal bytes with the same version of this program,
 * whatever their order, the machine and the day.
 */
public final class ReleaseBuilder {
    private ReleaseBuilder() {}

    /**
     * Builds a release of room groups of about a million trials, as the other one does.
     *
     * @param input what goes in
     * @param facts what it says of itself
     * @param target folder that does not exist yet; its parent must
     * @return its manifest
     * @throws IOException as the other one
     */
    public static Manifest build(ReleaseInput input, ReleaseFacts facts, Path target) throws IOException {
        return build(input, facts, RoomGroups.TRIALS_PER_GROUP, target);
    }

    /**
     * Builds a release. It appears under its name when it is complete; after a failure nothing is left.
     *
     * @param input what goes in
     * @param facts what it says of itself
     * @param trialsPerGroup how many trials a room group may hold before rooms are split into more, at most 512, groups
     * @param target folder that does not exist yet; its parent must
     * @return its manifest
     * @throws IllegalArgumentException when trialsPerGroup is below 1
     * @throws DataRefused when a contribution does not pass the checks
     * @throws IOException when the target exists, or something cannot be read or written
     */
    public static Manifest build(ReleaseInput input, ReleaseFacts facts, long trialsPerGroup, Path target)
            throws IOException {
        if (trialsPerGroup < 1) {
            throw new IllegalArgumentException("trialsPerGroup " + trialsPerGroup + " < 1");
        }
        Path folder = target.toAbsolutePath().normalize();
        if (Files.exists(folder)) {
            throw new FileAlreadyExistsException(
                    target.toString(), null, "is there already: a release is never changed, choose a new folder");
        }
        Path part = Files.createTempDirectory(folder.getParent(), "." + folder.getFileName() + ".part");
        try {
            Manifest manifest = fill(input, facts, trialsPerGroup, part);
            Files.move(part, folder, StandardCopyOption.ATOMIC_MOVE);
            return manifest;
        } finally {
            discard(part);
        }
    }

    private static Manifest fill(ReleaseInput input, ReleaseFacts facts, long trialsPerGroup, Path folder)
            throws IOException {
        // beside the release, where there is room for it
        try (SessionShelf shelf = new SessionShelf(folder)) {
            input.read(shelf);
            List<SpilledSession> sessions = shelf.sorted();
            if (sessions.isEmpty()) {
                throw new IOException("there is no session to release: name contributions that hold some");
            }
            ReleaseFiles files = new ReleaseFiles(folder);
            long trials = sessions.stream().mapToLong(SpilledSession::trials).sum();
            RoomGroups groups = RoomGroups.forTrials(trials, trialsPerGroup);
            RecordedTables recorded = new RecordedTables(shelf.recorded(sessions), files);
            new TableFiles(shelf, recorded, files).write(sessions, groups);
            return new Description(facts, shelf.contributions(), sessions, groups).write(files);
        }
    }

    /**
     * Removes the folder of a release that was not completed, and all in it; does nothing when there is none.
     *
     * @param folder as given to {@link #build}
     * @throws IOException when something in it cannot be removed
     */
    public static void discard(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
