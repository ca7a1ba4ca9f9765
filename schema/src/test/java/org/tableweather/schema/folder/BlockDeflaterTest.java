package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The platform's own inflater is the judge. */
class BlockDeflaterTest {

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 1000, BlockDeflater.BLOCK - 1, BlockDeflater.BLOCK, BlockDeflater.BLOCK + 1, 9_000_001})
    void isInflatedToWhatItWas(int length) throws IOException {
        byte[] rows = rows(length);

        byte[] packed = deflated(rows, 1 << 16);

        byte[] unpacked =
                new InflaterInputStream(new ByteArrayInputStream(packed), new Inflater(true), 1 << 16).readAllBytes();
        assertThat(Arrays.equals(unpacked, rows)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(ints = {777, 1 << 13, 3_000_000})
    void doesNotDependOnHowTheInputComes(int piece) throws IOException {
        byte[] rows = rows(2_500_000);

        assertThat(Arrays.equals(deflated(rows, piece), deflated(rows, 1 << 16)))
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void isHardlyLargerThanOneStream(boolean chance) throws IOException {
        byte[] input = rows(3_000_000);
        if (chance) {
            new Random(1).nextBytes(input);
        }
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(plain, new Deflater(1, true))) {
            out.write(input);
        }

        assertThat(deflated(input, 1 << 16).length).isLessThan((int) (1.01 * plain.size()));
    }

    private static byte[] deflated(byte[] input, int piece) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        BlockDeflater deflater = new BlockDeflater(Deflater.BEST_SPEED);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater)) {
            for (int at = 0; at < input.length; at += piece) {
                out.write(input, at, Math.min(piece, input.length - at));
            }
        } finally {
            deflater.end();
        }
        return packed.toByteArray();
    }

    /** Rows of digits, as trials have them. */
    private static byte[] rows(int length) {
        Random random = new Random(length);
        byte[] rows = new byte[length];
        for (int i = 0; i < length; i++) {
            rows[i] = (byte) (i % 80 == 79 ? '\n' : i % 7 == 0 ? ',' : '0' + random.nextInt(10));
        }
        return rows;
    }
}
