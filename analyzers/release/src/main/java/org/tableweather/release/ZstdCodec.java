package org.tableweather.release;

import com.github.luben.zstd.Zstd;
import com.github.luben.zstd.ZstdCompressCtx;
import com.github.luben.zstd.ZstdDecompressCtx;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.apache.parquet.bytes.BytesInput;
import org.apache.parquet.compression.CompressionCodecFactory;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;

/**
 * Zstandard for Parquet's pages, and no other codec: the built-in ones need libraries that are not wanted here. One instance
 * serves one thread.
 *
 * @source RFC8878
 */
final class ZstdCodec implements CompressionCodecFactory {
    private static final int THOROUGH = 16;

    private final int level;
    // memory outside the heap, which only closing gives back
    private final List<Runnable> closers = new ArrayList<>();

    private ZstdCodec(int level) {
        this.level = level;
    }

    /** For files that are written in passing: the default level of the reference implementation. */
    static ZstdCodec standard() {
        return new ZstdCodec(Zstd.defaultCompressionLevel());
    }

    /** For files that are written once and kept: smaller, slower to write, as fast to read. */
    static ZstdCodec thorough() {
        return new ZstdCodec(THOROUGH);
    }

    @Override
    public BytesInputCompressor getCompressor(CompressionCodecName codec) {
        return codec == CompressionCodecName.UNCOMPRESSED ? Plain.PAGES : new Compressor(packing(), level);
    }

    @Override
    public BytesInputDecompressor getDecompressor(CompressionCodecName codec) {
        return switch (codec) {
            case UNCOMPRESSED -> Plain.PAGES;
            case ZSTD -> new Decompressor(unpacking());
            default ->
                throw new UnsupportedOperationException("the file is compressed with " + codec
                        + ", which is not read here: write it again with zstd or uncompressed");
        };
    }

    private ZstdCompressCtx packing() {
        ZstdCompressCtx context = new ZstdCompressCtx();
        closers.add(context::close);
        return context;
    }

    private ZstdDecompressCtx unpacking() {
        ZstdDecompressCtx context = new ZstdDecompressCtx();
        closers.add(context::close);
        return context;
    }

    /** Called when the file that asked for compressors is closed; whoever asks again gets new ones. */
    @Override
    public void release() {
        closers.forEach(Runnable::run);
        closers.clear();
    }

    /** How many contexts hold memory. */
    int held() {
        return closers.size();
    }

    private static byte[] array(BytesInput bytes) throws IOException {
        ByteArrayOutputStream array = new ByteArrayOutputStream(Math.toIntExact(bytes.size()));
        bytes.writeAllTo(array);
        return array.toByteArray();
    }

    /** Pages as they are. */
    private static final class Plain implements BytesInputCompressor, BytesInputDecompressor {
        static final Plain PAGES = new Plain();

        @Override
        public BytesInput compress(BytesInput bytes) {
            return bytes;
        }

        @Override
        public BytesInput decompress(BytesInput bytes, int size) {
            return bytes;
        }

        @Override
        public void decompress(ByteBuffer in, int length, ByteBuffer out, int size) {
            out.put(in);
        }

        @Override
        public CompressionCodecName getCodecName() {
            return CompressionCodecName.UNCOMPRESSED;
        }

        @Override
        public void release() {
            // holds nothing
        }
    }

    private static final class Compressor implements BytesInputCompressor {
        private final ZstdCompressCtx context;

        Compressor(ZstdCompressCtx context, int level) {
            this.context = context;
            context.setLevel(level);
        }

        @Override
        public BytesInput compress(BytesInput bytes) throws IOException {
            return BytesInput.from(context.compress(array(bytes)));
        }

        @Override
        public CompressionCodecName getCodecName() {
            return CompressionCodecName.ZSTD;
        }

        @Override
        public void release() {
            context.close();
        }
    }

    private static final class Decompressor implements BytesInputDecompressor {
        private final ZstdDecompressCtx context;

        Decompressor(ZstdDecompressCtx context) {
            this.context = context;
        }

        @Override
        public BytesInput decompress(BytesInput bytes, int size) throws IOException {
            return BytesInput.from(context.decompress(array(bytes), size));
        }

        @Override
        public void decompress(ByteBuffer in, int length, ByteBuffer out, int size) {
            byte[] packed = new byte[length];
            in.get(packed);
            out.put(context.decompress(packed, size));
        }

        @Override
        public void release() {
            context.close();
        }
    }
}
