package org.tableweather.schema.folder;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.Deflater;

/**
 * Deflates block by block, several blocks side by side: each by itself, ended on a whole byte, so that they stand one behind
 * the other in one stream. The same input gives the same bytes, however it comes and however many processors there are.
 *
 * @source RFC1951
 */
final class BlockDeflater extends Deflater {
    /** Bytes of a block: what a block cannot refer to in the one before costs some hundredth of a percent. */
    static final int BLOCK = 1 << 19;

    private static final int MOST_THREADS = 8;

    private final int level;
    private final int threads = Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());
    private final ExecutorService workers = Executors.newFixedThreadPool(threads, job -> {
        Thread thread = new Thread(job, "deflate");
        thread.setDaemon(true);
        return thread;
    });
    private final Deque<Future<byte[]>> deflating = new ArrayDeque<>();
    private byte[] block = new byte[BLOCK];
    private int filled;
    private byte[] ready = {};
    private int taken;
    private boolean finishing;
    private long bytesIn;
    private long bytesOut;

    BlockDeflater(int level) {
        super(level, true);
        this.level = level;
    }

    @Override
    public void setInput(byte[] input, int from, int length) {
        int at = from;
        int end = from + length;
        while (at < end) {
            if (filled == BLOCK) {
                hand(false);
            }
            int count = Math.min(end - at, BLOCK - filled);
            System.arraycopy(input, at, block, filled, count);
            filled += count;
            at += count;
        }
        bytesIn += length;
    }

    private void hand(boolean last) {
        byte[] input = block;
        int length = filled;
        deflating.add(workers.submit(() -> deflated(input, length, level, last)));
        block = new byte[BLOCK];
        filled = 0;
    }

    private static byte[] deflated(byte[] input, int length, int level, boolean last) {
        Deflater deflater = new Deflater(level, true);
        try {
            deflater.setInput(input, 0, length);
            if (last) {
                deflater.finish();
            }
            byte[] output = new byte[length / 2 + 64];
            int count = 0;
            while (true) {
                int free = output.length - count;
                int more = deflater.deflate(output, count, free, last ? NO_FLUSH : SYNC_FLUSH);
                count += more;
                // room that is left over says that the flush is complete
                if (last ? deflater.finished() : more < free) {
                    return Arrays.copyOf(output, count);
                }
                output = Arrays.copyOf(output, 2 * output.length);
            }
        } finally {
            deflater.end();
        }
    }

    /** No, as long as so many blocks wait that what is done must be taken first. */
    @Override
    public boolean needsInput() {
        return taken == ready.length && deflating.size() <= 2 * threads;
    }

    @Override
    public int deflate(byte[] output, int from, int length) {
        if (taken == ready.length && !deflating.isEmpty()) {
            ready = result(deflating.remove());
            taken = 0;
        }
        int count = Math.min(length, ready.length - taken);
        System.arraycopy(ready, taken, output, from, count);
        taken += count;
        bytesOut += count;
        return count;
    }

    private static byte[] result(Future<byte[]> block) {
        try {
            return block.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted while packing");
        } catch (ExecutionException e) {
            throw new IllegalStateException("a block could not be deflated", e.getCause());
        }
    }

    @Override
    public void finish() {
        if (!finishing) {
            finishing = true;
            hand(true);
        }
    }

    @Override
    public boolean finished() {
        return finishing && deflating.isEmpty() && taken == ready.length;
    }

    @Override
    public long getBytesRead() {
        return bytesIn;
    }

    @Override
    public long getBytesWritten() {
        return bytesOut;
    }

    @Override
    public void reset() {
        finishing = false;
        bytesIn = 0;
        bytesOut = 0;
        super.reset();
    }

    @Override
    public void end() {
        workers.shutdownNow();
        super.end();
    }
}
