package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Uploads on their way: those of one request, and those that go on over several. Never more than the limit on disk. */
@ApplicationScoped
class Incoming {
    private static final int BUFFER = 1 << 17;
    private static final Duration KEPT = Duration.ofDays(7);
    private static final String ONE_REQUEST = ".upload";
    private static final String RESUMABLE = ".part";

    private final DataFolder folder;
    private final Faults faults;
    private final Clock clock;
    private final long maxBytes;
    private final Most whole;
    private final Set<Path> busy = ConcurrentHashMap.newKeySet();
    /** Resumable uploads that came in one piece since the start: their bytes need not be read again. */
    private final Map<Path, Hashed> hashed = new ConcurrentHashMap<>();

    Incoming(
            DataFolder folder,
            Faults faults,
            Clock clock,
            @ConfigProperty(name = "tableweather.upload.max-bytes") long maxBytes) {
        this.folder = folder;
        this.faults = faults;
        this.clock = clock;
        this.maxBytes = maxBytes;
        this.whole = new Most(maxBytes, "TABLEWEATHER_UPLOAD_MAX_BYTES");
    }

    /**
     * A complete upload.
     *
     * @param file where it is
     * @param sha256 of it
     * @param bytes its length
     */
    record Complete(Path file, String sha256, long bytes) {}

    private record Hashed(long bytes, String sha256) {}

    /**
     * How large an archive may be.
     *
     * @param bytes of it
     * @param setting by which the operator may raise it
     */
    record Most(long bytes, String setting) {}

    long maxBytes() {
        return maxBytes;
    }

    /** Takes a whole archive that may be as large as any. */
    Complete take(InputStream body) throws IOException {
        return take(body, whole);
    }

    /**
     * Takes a whole archive.
     *
     * @param body is read to its end
     * @param most how large it may be
     * @throws Refusal when it is larger than allowed
     * @throws IOException when the client goes away; nothing is left then
     */
    Complete take(InputStream body, Most most) throws IOException {
        Path file = folder.incoming().resolve(UUID.randomUUID() + ONE_REQUEST);
        try {
            MessageDigest digest = Sha256.begin();
            long bytes = append(body, file, 0, digest, most);
            return new Complete(file, Sha256.hex(digest), bytes);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(file);
            throw e;
        }
    }

    /** Bytes held of a resumable upload; 0 when there is none. */
    long held(long accountId, String sha256) throws IOException {
        Path file = part(accountId, sha256);
        return Files.exists(file) ? Files.size(file) : 0;
    }

    /**
     * Takes another piece of a resumable upload. What arrives before the client goes away is kept.
     *
     * @param offset where the piece begins
     * @return bytes held now
     * @throws Refusal when the upload does not stand at this offset, is busy, or grows too large
     */
    long takePart(long accountId, String sha256, long offset, InputStream body) throws IOException {
        Path file = part(accountId, sha256);
        if (!busy.add(file)) {
            throw new Refusal(
                    ErrorCode.UPLOAD_OFFSET,
                    "upload " + sha256 + " is being written to by another request: wait, ask for its offset, go on");
        }
        try {
            long held = held(accountId, sha256);
            if (held != offset) {
                throw new Refusal(
                                ErrorCode.UPLOAD_OFFSET,
                                "Upload-Offset = " + offset + ", but " + held + " bytes are held: go on from there")
                        .withHeader(UploadResource.OFFSET, Long.toString(held));
            }
            hashed.remove(file);
            MessageDigest digest = Sha256.begin();
            long bytes = append(body, file, held, digest, whole);
            if (held == 0) {
                hashed.put(file, new Hashed(bytes, Sha256.hex(digest)));
            }
            return bytes;
        } finally {
            busy.remove(file);
        }
    }

    /**
     * The file of a resumable upload, once it is what it is called.
     *
     * @throws Refusal when it is not there, or has another digest; it must be sent again then
     */
    Complete complete(long accountId, String sha256) throws IOException {
        Path file = part(accountId, sha256);
        if (!Files.exists(file)) {
            throw new Refusal(
                    ErrorCode.NOT_FOUND,
                    "no bytes of upload " + sha256 + " are held: send them to PATCH /api/v1/uploads/" + sha256);
        }
        Hashed inOne = hashed.remove(file);
        String actual = inOne != null && inOne.bytes() == Files.size(file) ? inOne.sha256() : Sha256.hex(file);
        if (!actual.equals(sha256)) {
            long held = Files.size(file);
            throw new Refusal(
                            ErrorCode.DIGEST_MISMATCH,
                            "the " + held + " bytes held have the SHA-256 " + actual + ", not " + sha256
                                    + ": send the rest, or DELETE /api/v1/uploads/" + sha256 + " and begin again")
                    .withHeader(UploadResource.OFFSET, Long.toString(held));
        }
        return new Complete(file, sha256, Files.size(file));
    }

    /** Forgets a resumable upload. */
    void forget(long accountId, String sha256) throws IOException {
        Path file = part(accountId, sha256);
        hashed.remove(file);
        Files.deleteIfExists(file);
    }

    /** On start: what a killed server was taking in one request is of no use; what can go on is kept for a week. */
    void tidy() throws IOException {
        Instant oldest = Instant.now(clock).minus(KEPT);
        try (Stream<Path> files = Files.list(folder.incoming())) {
            for (Path file : files.toList()) {
                boolean stale = Files.getLastModifiedTime(file).toInstant().isBefore(oldest);
                if (file.toString().endsWith(ONE_REQUEST) || stale) {
                    Files.delete(file);
                }
            }
        }
    }

    private Path part(long accountId, String sha256) {
        return folder.incoming().resolve(accountId + "-" + sha256 + RESUMABLE);
    }

    private long append(InputStream body, Path file, long offset, MessageDigest digest, Most most) throws IOException {
        long length = offset;
        byte[] buffer = new byte[BUFFER];
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            for (int n = body.read(buffer); n >= 0; n = body.read(buffer)) {
                checkFits(length + n, most);
                digest.update(buffer, 0, n);
                write(channel, ByteBuffer.wrap(buffer, 0, n));
                length += n;
                faults.at(FaultPoint.UPLOAD_BEGUN);
            }
            return length;
        }
    }

    private static void write(FileChannel channel, ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }

    private static void checkFits(long length, Most most) {
        if (length > most.bytes()) {
            throw new Refusal(
                    ErrorCode.BODY_TOO_LARGE,
                    "the archive has more than the " + most.bytes()
                            + " bytes allowed: split the contribution, or have the operator raise " + most.setting());
        }
    }
}
