package org.tableweather.server.contribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.server.datafolder.DataFolder;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

class IncomingTest {
    private static final Instant NOW = Instant.parse("2026-01-12T12:00:00Z");
    private static final long LIMIT = 10;

    /** FIPS 180-4, appendix B.1: the digest of "abc". */
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path root;

    private DataFolder folder;
    private Incoming incoming;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.at(root.resolve("data"));
        incoming = new Incoming(folder, new Faults("none"), Clock.fixed(NOW, ZoneOffset.UTC), LIMIT);
    }

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII));
    }

    private long files() throws IOException {
        try (Stream<Path> files = Files.list(folder.incoming())) {
            return files.count();
        }
    }

    @Test
    void namesWhatItTakesByItsDigest() throws IOException {
        Incoming.Complete complete = incoming.take(bytes("abc"));
        assertThat(complete.sha256()).isEqualTo(ABC);
        assertThat(complete.bytes()).isEqualTo(3);
        assertThat(complete.file()).hasContent("abc");
    }

    @Test
    void anUploadWithoutStatedLengthStopsAtTheLimit() throws IOException {
        assertThatThrownBy(() -> incoming.take(bytes("01234567890")))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.code()).isEqualTo(ErrorCode.BODY_TOO_LARGE))
                .hasMessageContaining("10 bytes");
        assertThat(files()).isZero();
    }

    @Test
    void thePiecesTogetherStopAtTheLimit() throws IOException {
        assertThat(incoming.takePart(1, ABC, 0, bytes("01234"))).isEqualTo(5);
        assertThatThrownBy(() -> incoming.takePart(1, ABC, 5, bytes("567890"))).isInstanceOf(Refusal.class);
        assertThat(incoming.held(1, ABC)).isEqualTo(5);
    }

    @Test
    void theDigestIsOfAllPiecesHoweverTheyCame() throws IOException {
        incoming.takePart(1, ABC, 0, bytes("a"));
        incoming.takePart(1, ABC, 1, bytes("bc"));
        assertThat(incoming.complete(1, ABC).sha256()).isEqualTo(ABC);
        incoming.takePart(2, ABC, 0, bytes("abc"));
        assertThat(incoming.complete(2, ABC).sha256()).isEqualTo(ABC);
        incoming.takePart(3, ABC, 0, bytes("abd"));
        assertThatThrownBy(() -> incoming.complete(3, ABC))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.code()).isEqualTo(ErrorCode.DIGEST_MISMATCH));
    }

    @Test
    void anUploadThatBeganAnewHasItsOwnDigest() throws IOException {
        incoming.takePart(1, ABC, 0, bytes("xyz"));
        incoming.forget(1, ABC);
        incoming.takePart(1, ABC, 0, bytes("ab"));
        incoming.takePart(1, ABC, 2, bytes("c"));
        assertThat(incoming.complete(1, ABC).sha256()).isEqualTo(ABC);
    }

    @Test
    void theSameUploadOfTwoAccountsIsTwoUploads() throws IOException {
        incoming.takePart(1, ABC, 0, bytes("a"));
        assertThat(incoming.takePart(2, ABC, 0, bytes("abc"))).isEqualTo(3);
        assertThat(incoming.complete(2, ABC).bytes()).isEqualTo(3);
        assertThatThrownBy(() -> incoming.complete(1, ABC)).hasMessageContaining("DELETE");
    }

    @Test
    void tidyKeepsWhatCanGoOnForAWeek() throws IOException {
        incoming.take(bytes("abc"));
        incoming.takePart(1, ABC, 0, bytes("a"));
        incoming.takePart(2, ABC, 0, bytes("a"));
        try (Stream<Path> files = Files.list(folder.incoming())) {
            for (Path file : files.toList()) {
                boolean old = file.getFileName().toString().startsWith("2-");
                Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(old ? 8 * 86_400 : 60)));
            }
        }
        incoming.tidy();
        assertThat(files()).isEqualTo(1);
        assertThat(incoming.held(1, ABC)).isEqualTo(1);
    }
}
