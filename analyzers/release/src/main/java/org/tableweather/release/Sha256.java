package org.tableweather.release;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The SHA-256 of some bytes.
 *
 * @param hex 64 hex digits
 * @param bytes how many bytes
 * @source FIPS180
 */
record Sha256(String hex, long bytes) {
    private static final int BUFFER = 1 << 16;

    static Sha256 of(byte[] content) {
        return new Sha256(HexFormat.of().formatHex(digest().digest(content)), content.length);
    }

    static Sha256 ofFile(Path file) throws IOException {
        MessageDigest sha256 = digest();
        long bytes = 0;
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = Files.newInputStream(file)) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                sha256.update(buffer, 0, read);
                bytes += read;
            }
        }
        return new Sha256(HexFormat.of().formatHex(sha256.digest()), bytes);
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
