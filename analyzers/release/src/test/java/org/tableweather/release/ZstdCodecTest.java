package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.parquet.bytes.BytesInput;
import org.apache.parquet.compression.CompressionCodecFactory;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.junit.jupiter.api.Test;

/** What a file asked for is given back with it: contexts lie outside the heap, where no collector finds them. */
class ZstdCodecTest {
    @Test
    void contextsAreGivenBackWithTheFile() throws IOException {
        ZstdCodec codec = ZstdCodec.thorough();
        byte[] page = "tight, wide, tight, wide, tight, wide".getBytes(StandardCharsets.UTF_8);
        CompressionCodecFactory.BytesInputCompressor compressor = codec.getCompressor(CompressionCodecName.ZSTD);
        byte[] packed = bytes(compressor.compress(BytesInput.from(page)));
        byte[] read = bytes(
                codec.getDecompressor(CompressionCodecName.ZSTD).decompress(BytesInput.from(packed), page.length));
        assertThat(read).isEqualTo(page);
        assertThat(codec.held()).isEqualTo(2);

        codec.release();

        assertThat(codec.held()).isZero();
        codec.release();
        // closed once more by whoever asked for it
        compressor.release();
    }

    private static byte[] bytes(BytesInput input) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        input.writeAllTo(bytes);
        return bytes.toByteArray();
    }
}
