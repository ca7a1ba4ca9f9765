package org.tableweather.schema.folder;

import java.io.BufferedOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.tableweather.schema.json.ContributionJson;

/** Packs a contribution folder so that equal content gives equal bytes. */
final class Packing {
    /** The earliest time that a zip entry can carry. */
    private static final LocalDateTime FIXED = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final List<String> FILES =
            List.of(ClimateRows.FILE, ContactRows.FILE, ContributionJson.FILE, TrialRows.FILE);

    private Packing() {}

    static void pack(Path folder, Path archive) throws IOException {
        Path target = archive.toAbsolutePath();
        Path part = target.resolveSibling("." + target.getFileName() + ColumnFile.PART);
        try {
            try (FolderSource source = new FolderSource(folder);
                    ZipOutputStream zip = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(part)))) {
                zip.setLevel(Deflater.BEST_SPEED);
                for (String file : FILES) {
                    add(source, file, zip);
                }
            }
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static void add(FolderSource source, String file, ZipOutputStream zip) throws IOException {
        Optional<InputStream> opened = source.open(file);
        if (opened.isEmpty()) {
            if (file.equals(ContributionJson.FILE)) {
                throw new FileNotFoundException(source.name() + " has no " + file + ": it holds no contribution");
            }
            return;
        }
        ZipEntry entry = new ZipEntry(file);
        entry.setTimeLocal(FIXED);
        zip.putNextEntry(entry);
        try (InputStream in = opened.get()) {
            in.transferTo(zip);
        }
        zip.closeEntry();
    }
}
