package org.tableweather.schema.folder;

/**
 * Bounds for an archive from outside.
 *
 * @param maxEntries files in it
 * @param maxUnpackedBytes sum of the unpacked sizes, counted while unpacking
 * @param maxRatio unpacked over packed size of one entry, once 10 MB are unpacked
 */
public record ArchiveLimits(int maxEntries, long maxUnpackedBytes, double maxRatio) {

    /** 64 files, 8 GiB, 200 to 1. */
    public static ArchiveLimits defaults() {
        return new ArchiveLimits(64, 8L << 30, 200);
    }
}
