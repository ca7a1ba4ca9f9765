package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.parquet.bytes.HeapByteBufferAllocator;
import org.apache.parquet.column.values.rle.RunLengthBitPackingHybridEncoder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the reference implementation of Parquet packs comes out again. */
class PackedNumbersTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 8, 9, 11, 16, 17, 20, 31})
    void readsWhatTheReferenceImplementationPacked(int width) throws IOException {
        int[] numbers = numbers(width);
        PackedNumbers packed = new PackedNumbers(packed(numbers, width), 0, width);
        int[] read = new int[numbers.length];
        int[] some = new int[100];
        for (int at = 0; at < read.length; at += 100) {
            packed.next(some, Math.min(100, read.length - at));
            System.arraycopy(some, 0, read, at, Math.min(100, read.length - at));
        }
        assertThat(read).isEqualTo(numbers);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 9, 20})
    void passesOverWhatIsNotWanted(int width) throws IOException {
        int[] numbers = numbers(width);
        PackedNumbers packed = new PackedNumbers(packed(numbers, width), 0, width);
        int[] read = new int[5];
        for (int at = 0; at + 42 < numbers.length; at += 42) {
            packed.next(read, 5);
            assertThat(read).isEqualTo(Arrays.copyOfRange(numbers, at, at + 5));
            packed.skip(37);
        }
    }

    @Test
    void refusesWhatEndsTooEarly() throws IOException {
        byte[] bytes = packed(numbers(9), 9);
        PackedNumbers packed = new PackedNumbers(bytes, 0, 9);
        assertThatThrownBy(() -> packed.next(new int[10_000], 10_000))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("end too early");
    }

    /** Stretches of the same number, of two by turns and of any, so that both forms occur. */
    private static int[] numbers(int width) {
        SplittableRandom random = new SplittableRandom(width);
        int[] numbers = new int[1003];
        int bound = (int) Math.min(Integer.MAX_VALUE, 1L << width);
        for (int i = 0; i < numbers.length; i++) {
            boolean same = i > 0 && i / 50 % 3 == 0;
            numbers[i] = same ? numbers[i - 1] : random.nextInt(bound);
        }
        return numbers;
    }

    private static byte[] packed(int[] numbers, int width) throws IOException {
        try (RunLengthBitPackingHybridEncoder encoder =
                new RunLengthBitPackingHybridEncoder(width, 64, 4096, new HeapByteBufferAllocator())) {
            for (int number : numbers) {
                encoder.writeInt(number);
            }
            byte[] bytes = encoder.toBytes().toInputStream().readAllBytes();
            return Arrays.copyOf(bytes, bytes.length + PackedNumbers.PADDING);
        }
    }
}
