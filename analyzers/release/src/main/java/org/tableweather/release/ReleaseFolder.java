package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.Kind;

/** A release on this machine. */
public final class ReleaseFolder {
    private static final String GROUP = "room_group=";

    private final Path folder;
    private final Manifest manifest;

    private ReleaseFolder(Path folder, Manifest manifest) {
        this.folder = folder;
        this.manifest = manifest;
    }

    /** Whether this looks like a release: a folder with a manifest. */
    public static boolean isRelease(Path folder) {
        return Files.isRegularFile(folder.resolve(Manifest.FILE));
    }

    /**
     * Opens a release; its files are not verified.
     *
     * @param folder that holds {@code manifest.json}
     * @throws NoRelease when there is no manifest
     * @throws IOException when it cannot be read
     */
    public static ReleaseFolder open(Path folder) throws IOException {
        Path manifest = folder.resolve(Manifest.FILE);
        if (!Files.isRegularFile(manifest)) {
            throw new NoRelease(folder);
        }
        return new ReleaseFolder(folder, Manifest.read(Files.readAllBytes(manifest)));
    }

    /** Where it lies. */
    public Path path() {
        return folder;
    }

    /** What it says of itself. */
    public Manifest manifest() {
        return manifest;
    }

    /**
     * The tombstones that it carries: a later release carries them on.
     *
     * @throws IOException when {@code changes.json} cannot be read
     */
    public List<Tombstone> tombstones() throws IOException {
        byte[] json = Files.readAllBytes(folder.resolve(Changes.FILE));
        return ReleaseJson.read(json, Changes.class, Changes.FILE).tombstones();
    }

    /** The groups of rooms that have sessions, in order: {@code 000}, {@code 001} ... */
    public List<String> roomGroups() {
        TreeSet<String> groups = new TreeSet<>();
        for (Manifest.FileEntry file : manifest.files()) {
            if (file.path().startsWith("sessions/" + GROUP)) {
                groups.add(groupOf(file));
            }
        }
        return List.copyOf(groups);
    }

    /** The group that the path of a table names; empty when it names none. */
    static String groupOf(Manifest.FileEntry file) {
        int at = file.path().indexOf(GROUP);
        int end = file.path().indexOf('/', Math.max(at, 0));
        return at < 0 || end < 0 ? "" : file.path().substring(at + GROUP.length(), end);
    }

    /** The file of a group's sessions. */
    static String sessionFile(String roomGroup) {
        return "sessions/" + GROUP + roomGroup + "/part-0.parquet";
    }

    /** The files of a group's trials, one a kind; or the one of a kind. */
    List<Manifest.FileEntry> trialFiles(String roomGroup, Optional<Kind> kind) {
        String start =
                "trials/" + kind.map(one -> "kind=" + one.schemaName() + "/").orElse("");
        return manifest.files().stream()
                .filter(file -> file.path().startsWith(start))
                .filter(file -> groupOf(file).equals(roomGroup))
                .toList();
    }

    /**
     * Reads a group of rooms: every session complete, trials in {@link org.tableweather.schema.record.Trial#CANONICAL_ORDER},
     * in the order of room key, session key and digest. Memory holds one session and one row group of each shot.
     *
     * @param roomGroup one of {@link #roomGroups()}
     * @param sink takes the sessions
     * @throws IOException when a file cannot be read or does not fit the others, or the sink fails
     */
    public void sessions(String roomGroup, SessionSink sink) throws IOException {
        sessions(roomGroup, Optional.empty(), sink);
    }

    /** The same of the trials of one kind: sessions without any are left out, others that are not complete have the digest of their part. */
    void sessions(String roomGroup, Optional<Kind> kind, SessionSink sink) throws IOException {
        mustHave(roomGroup);
        Path sessions = folder.resolve(sessionFile(roomGroup));
        try (SessionMerge merge = new SessionMerge(openRuns(roomGroup, kind), kind.isPresent())) {
            merge.read(sessions, sink);
        }
    }

    /** The same as columns of some numbers, every session in the same arrays. Memory holds one session and one page of each column. */
    void columns(String roomGroup, Set<TrialNumber> numbers, ColumnMerge.Sink sink) throws IOException {
        mustHave(roomGroup);
        try (ColumnMerge merge = new ColumnMerge(openColumns(roomGroup, numbers), numbers)) {
            merge.read(folder.resolve(sessionFile(roomGroup)), sink);
        }
    }

    private void mustHave(String roomGroup) throws IOException {
        if (!roomGroups().contains(roomGroup)) {
            throw new IOException(folder + " has no room group " + roomGroup + ": it has " + roomGroups());
        }
    }

    private List<ColumnRun> openColumns(String roomGroup, Set<TrialNumber> numbers) throws IOException {
        List<ColumnRun> runs = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (Manifest.FileEntry file : trialFiles(roomGroup, Optional.of(kind))) {
                long first = 0;
                for (Manifest.ShotRun shot : file.shots()) {
                    runs.add(
                            new ColumnRun(folder.resolve(file.path()), kind, shot.shot(), first, shot.rows(), numbers));
                    first += shot.rows();
                }
            }
        }
        return runs;
    }

    /**
     * Reads every session of all groups, group by group.
     *
     * @param sink takes the sessions
     * @throws IOException as in {@link #sessions(String, SessionSink)}
     */
    public void sessions(SessionSink sink) throws IOException {
        for (String group : roomGroups()) {
            sessions(group, sink);
        }
    }

    private List<TrialRun> openRuns(String roomGroup, Optional<Kind> kind) throws IOException {
        List<TrialRun> runs = new ArrayList<>();
        for (Manifest.FileEntry file : trialFiles(roomGroup, kind)) {
            long first = 0;
            for (Manifest.ShotRun shot : file.shots()) {
                runs.add(new TrialRun(folder.resolve(file.path()), first, shot.rows()));
                first += shot.rows();
            }
        }
        return runs;
    }
}
