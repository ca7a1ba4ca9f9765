package org.tableweather.release;

import java.util.List;
import java.util.Optional;

/**
 * The outcome of verifying a release.
 *
 * @param number of the release; empty when its manifest cannot be read
 * @param hash SHA-256 of the manifest, hex; empty when there is none
 * @param files how many were verified, the manifest included
 * @param bytes of them
 * @param faults what is not as it should be, by file; empty when all is well
 */
public record VerifyReport(Optional<Integer> number, String hash, int files, long bytes, List<Fault> faults) {
    public VerifyReport {
        faults = List.copyOf(faults);
    }

    /** What is wrong with a file. */
    public enum Problem {
        /** It is in the manifest, and not there. */
        MISSING,
        /** It is there, and not in the manifest. */
        EXTRA,
        /** Its bytes are not those that were released. */
        CHANGED,
        /** Its rows are not as many, or not those, that the manifest states. */
        ROWS
    }

    /**
     * A file that is not as it should be.
     *
     * @param path from the folder of the release
     * @param problem what is wrong
     * @param detail in words, with what was found and what should be
     */
    public record Fault(String path, Problem problem, String detail) {}

    /** Whether the release is the one that was released. */
    public boolean isSound() {
        return faults.isEmpty();
    }
}
