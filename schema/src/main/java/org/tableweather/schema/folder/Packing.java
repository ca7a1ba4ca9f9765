package org.tableweather.schema.folder;

import java.io.BufferedOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.json.ContributionJson;

/** Packs a contribution folder so that equal content gives equal bytes. */
final class Packing {
    /** The earliest time that a zip entry can carry. */
    private static final LocalDateTime FIXED = LocalDateTime.of(1980, 1, 1, 0, 0);

    private static final List<String> FILES =
            List.of(ClimateRows.FILE, ContactRows.FILE, ContributionJson.FILE, TrialRows.FILE);

    private static final int BUFFER = 1 << 16;

    private Packing() {}

    /** Its entries are deflated by several threads. */
    private static final class Zip extends ZipOutputStream {
        Zip(OutputStream out) {
            super(out);
            def.end();
            def = new BlockDeflater(Deflater.BEST_SPEED);
            buf = new byte[BUFFER];
        }
    }

    /** Packs; gives the SHA-256 of the archive, made while it is written. */
    static byte[] pack(Path folder, Path archive) throws IOException {
        MessageDigest sha256 = Sha256.begin();
        Path target = archive.toAbsolutePath();
        Path part = target.resolveSibling("." + target.getFileName() + ColumnFile.PART);
        try {
            try (FolderSource source = new FolderSource(folder);
                    OutputStream out = new DigestOutputStream(Files.newOutputStream(part), sha256);
                    ZipOutputStream zip = new Zip(new BufferedOutputStream(out, BUFFER))) {
                for (String file : FILES) {
                    add(source, file, zip);
                }
            }
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            return sha256.digest();
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
            byte[] buffer = new byte[BUFFER];
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                zip.write(buffer, 0, n);
            }
        }
        zip.closeEntry();
    }
}
