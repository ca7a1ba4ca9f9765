package org.tableweather.schema.digest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against the example digests that NIST publishes for FIPS 180-4 (one block, two blocks) and its long message of 'a'. */
class Sha256Test {
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    private static final String TWO_BLOCKS = "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1";
    private static final String MILLION_A = "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0";

    @Test
    void bytesHaveThePublishedDigests() {
        assertThat(Sha256.hex(ascii("abc"))).isEqualTo(ABC);
        assertThat(Sha256.hex(ascii("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")))
                .isEqualTo(TWO_BLOCKS);
    }

    @Test
    void aFileLongerThanTheBufferHasThePublishedDigest(@TempDir Path folder) throws IOException {
        byte[] content = new byte[1_000_000];
        Arrays.fill(content, (byte) 'a');
        assertThat(Sha256.hex(Files.write(folder.resolve("a"), content))).isEqualTo(MILLION_A);
    }

    @Test
    void whatIsGivenInPartsCounts() {
        MessageDigest sha256 = Sha256.begin();
        sha256.update(ascii("a"));
        sha256.update(ascii("bc"));
        assertThat(Sha256.hex(sha256)).isEqualTo(ABC);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
