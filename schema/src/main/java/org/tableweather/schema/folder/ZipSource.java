package org.tableweather.schema.folder;

import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;

/**
 * A contribution in a zip archive. What is unsafe or damaged is refused when it is met: in the list of files, or while a
 * file is unpacked, whose bytes are counted and whose CRC-32 is compared at its end.
 */
final class ZipSource implements ContributionSource {
    private static final long RATIO_FROM = 10L << 20;

    private final Path path;
    private final ArchiveLimits limits;
    private final Map<String, Long> unpacked = new HashMap<>();
    private ZipFile zip;
    private SortedMap<String, ZipEntry> entries;

    ZipSource(Path path, ArchiveLimits limits) {
        this.path = path;
        this.limits = limits;
    }

    @Override
    public String name() {
        return path.getFileName().toString();
    }

    @Override
    public SortedMap<String, Long> files() throws IOException {
        SortedMap<String, Long> sizes = new TreeMap<>();
        entries().forEach((name, entry) -> sizes.put(name, entry.getSize()));
        return sizes;
    }

    @Override
    public Optional<InputStream> open(String file) throws IOException {
        ZipEntry entry = entries().get(file);
        if (entry == null) {
            return Optional.empty();
        }
        long total = unpacked.entrySet().stream()
                .filter(other -> !other.getKey().equals(file))
                .mapToLong(Map.Entry::getValue)
                .sum();
        if (total + entry.getSize() > limits.maxUnpackedBytes()) {
            throw tooLarge(file, entry.getSize() + " bytes");
        }
        if (entry.getSize() > RATIO_FROM && entry.getSize() > limits.maxRatio() * entry.getCompressedSize()) {
            throw tooLarge(file, entry.getSize() + " bytes out of " + entry.getCompressedSize());
        }
        try {
            return Optional.of(new Guarded(zip.getInputStream(entry), file, entry, total));
        } catch (ZipException | EOFException e) {
            throw damaged(file + ": " + e.getMessage());
        }
    }

    @Override
    public void close() throws IOException {
        if (zip != null) {
            zip.close();
        }
    }

    private SortedMap<String, ZipEntry> entries() throws IOException {
        if (entries == null) {
            try {
                if (zip == null) {
                    zip = new ZipFile(path.toFile());
                }
                entries = list();
            } catch (ZipException | EOFException | IllegalArgumentException e) {
                throw damaged(String.valueOf(e.getMessage()));
            }
        }
        return entries;
    }

    private SortedMap<String, ZipEntry> list() throws IOException {
        List<ZipEntry> files = new ArrayList<>();
        for (ZipEntry entry : Collections.list(zip.entries())) {
            String name = entry.getName();
            if (!EntryNames.isSafe(name)) {
                throw refusedName(name, "the name leads out of the archive");
            }
            if (!entry.isDirectory() && !EntryNames.isJunk(name)) {
                files.add(entry);
            }
        }
        if (files.size() > limits.maxEntries()) {
            throw tooLarge(name(), files.size() + " files");
        }
        String top = EntryNames.topFolder(files.stream().map(ZipEntry::getName).toList());
        SortedMap<String, ZipEntry> byName = new TreeMap<>();
        for (ZipEntry entry : files) {
            if (byName.put(entry.getName().substring(top.length()), entry) != null) {
                throw refusedName(entry.getName(), "the name occurs more than once");
            }
        }
        return byName;
    }

    private ArchiveRefused refusedName(String name, String why) {
        return ArchiveRefused.because(StructureChecks.ARCHIVE_PATH, Place.file(name()), name, why + ": " + name);
    }

    private ArchiveRefused tooLarge(String file, String what) {
        return ArchiveRefused.because(
                StructureChecks.ARCHIVE_SIZE, Place.file(file), what, "the archive unpacks to too much: " + what);
    }

    private ArchiveRefused damaged(String detail) {
        String plain = detail.toLowerCase(Locale.ROOT);
        String message = plain.contains("encrypted")
                ? "the archive is encrypted"
                : plain.contains("end header") || plain.contains("end of central")
                        ? "the file is no zip archive, or its end is missing"
                        : "the archive is damaged: " + detail;
        return ArchiveRefused.because(StructureChecks.ARCHIVE, Place.file(name()), null, message);
    }

    /** Counts and sums what is unpacked of one file. */
    private final class Guarded extends FilterInputStream {
        private final String file;
        private final ZipEntry entry;
        private final long before;
        private final CRC32 sum = new CRC32();
        private long bytes;

        Guarded(InputStream in, String file, ZipEntry entry, long before) {
            super(in);
            this.file = file;
            this.entry = entry;
            this.before = before;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int count;
            try {
                count = super.read(buffer, offset, length);
            } catch (ZipException | EOFException e) {
                throw damaged(file + ": " + e.getMessage());
            }
            if (count < 0) {
                checkWhole();
            } else {
                sum.update(buffer, offset, count);
                bytes += count;
                unpacked.merge(file, bytes, Math::max);
                checkSize();
            }
            return count;
        }

        private void checkSize() throws ArchiveRefused {
            if (before + bytes > limits.maxUnpackedBytes() || bytes > entry.getSize()) {
                throw tooLarge(file, "more than " + Math.min(limits.maxUnpackedBytes(), entry.getSize()) + " bytes");
            }
            if (bytes > RATIO_FROM && bytes > limits.maxRatio() * entry.getCompressedSize()) {
                throw tooLarge(file, "more than " + limits.maxRatio() + " bytes out of one");
            }
        }

        private void checkWhole() throws ArchiveRefused {
            if (bytes != entry.getSize() || sum.getValue() != entry.getCrc()) {
                throw damaged(file + " does not unpack to its stated size and CRC-32");
            }
        }

        @Override
        public long skip(long count) throws IOException {
            byte[] buffer = new byte[(int) Math.min(8192, Math.max(1, count))];
            int read = read(buffer, 0, buffer.length);
            return Math.max(0, read);
        }

        @Override
        public boolean markSupported() {
            return false;
        }
    }
}
