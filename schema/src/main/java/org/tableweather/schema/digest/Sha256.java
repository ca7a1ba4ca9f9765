package org.tableweather.schema.digest;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * SHA-256, the one way in which this project names files, sessions, analyses and tokens by their content.
 *
 * @source FIPS180
 */
public final class Sha256 {
    private static final int BUFFER = 1 << 17;

    private Sha256() {}

    /** A digest to which bytes are still to be given. */
    public static MessageDigest begin() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** The digest of bytes, 32 bytes. */
    public static byte[] of(byte[] content) {
        return begin().digest(content);
    }

    /**
     * The digest of a file, 32 bytes. Memory holds a small part of it.
     *
     * @throws IOException when it cannot be read
     */
    public static byte[] of(Path file) throws IOException {
        MessageDigest sha256 = begin();
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = Files.newInputStream(file)) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                sha256.update(buffer, 0, read);
            }
        }
        return sha256.digest();
    }

    /** The digest of bytes, 64 lower-case hex digits. */
    public static String hex(byte[] content) {
        return HexFormat.of().formatHex(of(content));
    }

    /**
     * The digest of a file, 64 lower-case hex digits.
     *
     * @throws IOException when it cannot be read
     */
    public static String hex(Path file) throws IOException {
        return HexFormat.of().formatHex(of(file));
    }

    /** What was given to a digest, 64 lower-case hex digits; the digest begins anew. */
    public static String hex(MessageDigest sha256) {
        return HexFormat.of().formatHex(sha256.digest());
    }
}
