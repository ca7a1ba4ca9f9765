package org.tableweather.release;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.digest.Sha256;

/**
 * The content of {@code manifest.json}: what a release is and what belongs to it, file by file.
 *
 * @param schemaVersion semver of the layout, {@code 1.1}
 * @param number of the release
 * @param title in words
 * @param date of the release
 * @param invented whether all its data are made up for demonstration
 * @param datasetHash names the set of sessions, as in the answer of an analysis
 * @param totals how much
 * @param roomGroups how rooms are put into groups
 * @param previous the release before
 * @param changes against it, in numbers
 * @param contributions in it, by id
 * @param files all but this one and its hash, by path
 * @param hash SHA-256 of the manifest's own bytes, hex: identifies the release; not part of the file
 */
@JsonIgnoreProperties("hash")
public record Manifest(
        String schemaVersion,
        int number,
        String title,
        LocalDate date,
        boolean invented,
        String datasetHash,
        Totals totals,
        RoomGrouping roomGroups,
        Optional<Previous> previous,
        ChangeCounts changes,
        List<Member> contributions,
        List<FileEntry> files,
        String hash) {
    /** The name of the file. */
    public static final String FILE = "manifest.json";

    /** The file that holds the hash of it. */
    public static final String HASH_FILE = "manifest.sha256";

    /** The layout that is written. */
    public static final String SCHEMA_VERSION = "1.1";

    public Manifest {
        previous = previous == null ? Optional.empty() : previous;
        contributions = contributions == null ? List.of() : List.copyOf(contributions);
        files = files == null ? List.of() : List.copyOf(files);
        hash = hash == null ? "" : hash;
    }

    /**
     * How much is in a release.
     *
     * @param contributions how many
     * @param contributors different ones
     * @param rooms with sessions
     * @param sessions each counted once
     * @param trials attempts
     */
    public record Totals(int contributions, int contributors, int rooms, int sessions, long trials) {}

    /**
     * How rooms are put into groups: the first bits of the SHA-256 of the room key, as a number.
     *
     * @param bits how many of them
     * @param count 2 to that power
     */
    public record RoomGrouping(int bits, int count) {}

    /**
     * The release before.
     *
     * @param number of it
     * @param date of it
     * @param hash SHA-256 of its manifest, hex
     */
    public record Previous(int number, LocalDate date, String hash) {}

    /**
     * Contributions against the previous release; {@code changes.json} names them.
     *
     * @param added new
     * @param withdrawn there before, not any more
     * @param unchanged in both
     */
    public record ChangeCounts(int added, int withdrawn, int unchanged) {}

    /**
     * A contribution and what of it is in the release.
     *
     * @param id its identity
     * @param title in words
     * @param licence SPDX id
     * @param contributor the name they chose
     * @param orcid ORCID iD
     * @param invented whether made up for demonstration
     * @param archiveSha256 of the archive that was contributed
     * @param sessions of it in the release
     * @param trials of it in the release
     */
    public record Member(
            String id,
            Optional<String> title,
            String licence,
            String contributor,
            Optional<String> orcid,
            boolean invented,
            String archiveSha256,
            int sessions,
            long trials) {}

    /**
     * A file.
     *
     * @param path from the folder of the release, with slashes
     * @param bytes its length
     * @param sha256 of its bytes, hex
     * @param rows of a table
     * @param shots runs of equal shots in a table of trials, in the order of its rows
     */
    public record FileEntry(String path, long bytes, String sha256, Optional<Long> rows, List<ShotRun> shots) {
        public FileEntry {
            rows = rows == null ? Optional.empty() : rows;
            shots = shots == null ? List.of() : List.copyOf(shots);
        }

        /** Whether an analysis reads it: a table of trials or of sessions. */
        public boolean feedsAnalysis() {
            return path.startsWith("trials/") || path.startsWith("sessions/");
        }

        /** Whether it lies in a folder of this name. */
        boolean isIn(String folder) {
            return path.startsWith(folder + "/");
        }
    }

    /**
     * Neighbouring rows of one shot.
     *
     * @param shot its id
     * @param rows how many
     */
    public record ShotRun(String shot, long rows) {}

    /**
     * A manifest from its bytes.
     *
     * @throws IOException when it is none, or of a layout that is not known
     */
    public static Manifest read(byte[] json) throws IOException {
        Manifest read = ReleaseJson.read(json, Manifest.class, FILE);
        if (read.schemaVersion == null || !read.schemaVersion.matches("1\\.[0-9]+")) {
            throw new IOException(FILE + ": schemaVersion " + read.schemaVersion
                    + " is not 1.x: read it with a version of this program that knows it");
        }
        return read.withHash(Sha256.hex(json));
    }

    /** The bytes of the file. */
    public byte[] bytes() {
        return ReleaseJson.text(this).getBytes(StandardCharsets.UTF_8);
    }

    /** The hash of {@link #bytes()} filled in. */
    @JsonIgnore
    Manifest sealed() {
        return withHash(Sha256.hex(bytes()));
    }

    private Manifest withHash(String sha256) {
        return new Manifest(
                schemaVersion,
                number,
                title,
                date,
                invented,
                datasetHash,
                totals,
                roomGroups,
                previous,
                changes,
                contributions,
                files,
                sha256);
    }
}
