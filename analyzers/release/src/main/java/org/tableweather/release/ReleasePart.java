package org.tableweather.release;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.Kind;

/**
 * A release or a partition of it.
 *
 * @param release it belongs to
 * @param kind of the trials; empty for all
 * @param roomGroup of the rooms; empty for all
 */
record ReleasePart(ReleaseFolder release, Optional<Kind> kind, Optional<String> roomGroup) {
    private static final String KIND = "kind=";
    private static final String GROUP = "room_group=";
    private static final String TRIALS = "trials";
    private static final String SESSIONS = "sessions";
    /** trials, kind, room group, file. */
    private static final int DEEPEST = 4;

    static boolean isPartition(Path name) {
        return name.toString().startsWith(KIND) || name.toString().startsWith(GROUP);
    }

    /** What a path names; empty when no release is at it or around it. */
    static Optional<ReleasePart> at(Path path) throws IOException {
        Path whole = path.toAbsolutePath().normalize();
        Path root = whole;
        for (int up = 0; up <= DEEPEST && root != null; up++, root = root.getParent()) {
            if (ReleaseFolder.isRelease(root)) {
                return Optional.of(of(ReleaseFolder.open(given(path, up)), root.relativize(whole)));
            }
        }
        return Optional.empty();
    }

    /** The folder so many steps up, named as the user names it where that can be. */
    private static Path given(Path path, int up) {
        Path folder = path.getNameCount() > up ? path : path.toAbsolutePath();
        for (int i = 0; i < up; i++) {
            folder = folder.getParent();
        }
        return folder == null ? Path.of("") : folder;
    }

    private static ReleasePart of(ReleaseFolder release, Path inside) throws IOException {
        List<String> names = new ArrayList<>();
        inside.forEach(name -> names.add(name.toString()));
        names.removeIf(String::isEmpty);
        String top = names.isEmpty() ? TRIALS : names.get(0);
        if (!top.equals(TRIALS) && !top.equals(SESSIONS)) {
            throw new IOException(inside + " of release " + release.path() + " holds no trials: name the release, "
                    + TRIALS + "/, a folder kind=... or room_group=... in it, or a Parquet file");
        }
        Optional<Kind> kind = Optional.empty();
        Optional<String> group = Optional.empty();
        for (String name : names) {
            if (name.startsWith(KIND)) {
                String word = name.substring(KIND.length());
                kind = Optional.of(
                        Kind.of(word).orElseThrow(() -> new IOException(inside + ": there is no kind " + word)));
            } else if (name.startsWith(GROUP)) {
                group = Optional.of(name.substring(GROUP.length()));
            }
        }
        return new ReleasePart(release, kind, group);
    }

    private boolean isWhole() {
        return kind.isEmpty() && roomGroup.isEmpty();
    }

    String inWords() {
        return "release " + release.manifest().number() + " in " + release.path()
                + kind.map(one -> ", trials of kind " + one.schemaName() + " alone")
                        .orElse("")
                + roomGroup.map(one -> ", room group " + one + " alone").orElse("");
    }

    List<String> roomGroups() {
        return roomGroup.map(List::of).orElse(release.roomGroups());
    }

    /** The manifest's entries of the files that are read. */
    List<Manifest.FileEntry> entries() {
        List<Manifest.FileEntry> entries = new ArrayList<>();
        for (String group : roomGroups()) {
            release.manifest().files().stream()
                    .filter(file -> file.path().equals(ReleaseFolder.sessionFile(group)))
                    .forEach(entries::add);
            entries.addAll(release.trialFiles(group, kind));
        }
        return entries;
    }

    /** How many trials. */
    long rows() {
        return roomGroups().stream()
                .flatMap(group -> release.trialFiles(group, kind).stream())
                .mapToLong(file -> file.rows().orElse(0L))
                .sum();
    }

    void sessions(SessionSink sink) throws IOException {
        mustBeAsReleased();
        List<String> digests = new ArrayList<>();
        SessionSink counted = (session, trials) -> {
            digests.add(session.digest());
            sink.accept(session, trials);
        };
        for (String group : roomGroups()) {
            release.sessions(group, kind, counted);
        }
        mustBeAll(digests);
    }

    /** A hash over all sessions: a part of a release has none in the manifest. */
    void mustBeAll(List<String> digests) throws IOException {
        if (isWhole() && !Summaries.hash(digests).equals(release.manifest().datasetHash())) {
            throw new ReleaseChanged(release.path().resolve(Manifest.FILE)
                    + ": the sessions that were read have the hash " + Summaries.hash(digests) + " instead of "
                    + release.manifest().datasetHash());
        }
    }

    /** Every file that will be read has the hash that the manifest states. */
    void mustBeUnchanged() throws IOException {
        mustBeAsReleased();
        for (VerifyReport.Fault fault : new GroupFiles(release, entries()).faults()) {
            throw new ReleaseChanged(release.path().resolve(fault.path()) + ": " + fault.detail());
        }
    }

    /** The manifest has its hash, and every file that will be read the length that the manifest states. */
    void mustBeAsReleased() throws IOException {
        Path hash = release.path().resolve(Manifest.HASH_FILE);
        if (Files.isRegularFile(hash)
                && !Files.readString(hash, StandardCharsets.ISO_8859_1)
                        .startsWith(release.manifest().hash())) {
            throw new ReleaseChanged(release.path().resolve(Manifest.FILE) + " is not what " + Manifest.HASH_FILE
                    + " states, so one of the two was changed");
        }
        List<Manifest.FileEntry> entries = entries();
        if (entries.isEmpty()) {
            throw new IOException(inWords() + ": the manifest names no such file");
        }
        for (Manifest.FileEntry file : entries) {
            Path place = release.path().resolve(file.path());
            long bytes = Files.isRegularFile(place) ? Files.size(place) : -1;
            if (bytes != file.bytes()) {
                throw new ReleaseChanged(place + (bytes < 0 ? " is not there" : " has " + bytes + " bytes")
                        + ", the manifest states " + file.bytes() + " bytes");
            }
        }
    }
}
