package org.tableweather.server.contribution;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of archives. */
final class Sha256 {
    private static final int BUFFER = 1 << 17;

    private Sha256() {}

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Lower-case hex. */
    static String hex(MessageDigest digest) {
        return HexFormat.of().formatHex(digest.digest());
    }

    static String of(Path file) throws IOException {
        MessageDigest digest = digest();
        byte[] buffer = new byte[BUFFER];
        try (InputStream bytes = Files.newInputStream(file)) {
            for (int n = bytes.read(buffer); n >= 0; n = bytes.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        }
        return hex(digest);
    }
}
