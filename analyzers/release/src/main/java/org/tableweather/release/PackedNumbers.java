package org.tableweather.release;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Whole numbers below 2 to the power of a width, packed by turns as runs of the same number and as groups of 8 by their bits: as
 * Parquet stores levels, truths and the places of values in a dictionary.
 *
 * @source ApacheParquet
 */
final class PackedNumbers {
    private static final VarHandle LONG = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** So many bytes are read at once, wherever a number begins. */
    static final int PADDING = Long.BYTES;

    private static final int GROUP = 8;
    private static final int MOST_BITS = 32;

    private final byte[] bytes;
    private final int end;
    private final int width;
    private final long mask;
    private int at;
    private long left;
    private boolean same;
    private int number;
    private long bit;

    /**
     * Starts.
     *
     * @param bytes that hold them, and {@link #PADDING} more of any content
     * @param from of the first
     * @param width bits of a number, from 0
     */
    PackedNumbers(byte[] bytes, int from, int width) throws IOException {
        if (width < 0 || width > MOST_BITS) {
            throw new IOException("a number cannot have " + width + " bits");
        }
        this.bytes = bytes;
        this.end = bytes.length - PADDING;
        this.width = width;
        this.mask = (1L << width) - 1;
        this.at = from;
    }

    /** The next numbers. */
    void next(int[] to, int count) throws IOException {
        int done = 0;
        while (done < count) {
            int until = done + enter(count - done);
            if (same) {
                Arrays.fill(to, done, until, number);
            } else {
                unpack(to, done, until);
            }
            left -= until - done;
            done = until;
        }
    }

    /** Passes over numbers. */
    void skip(int count) throws IOException {
        int done = 0;
        while (done < count) {
            int some = enter(count - done);
            bit += (long) some * width;
            left -= some;
            done += some;
        }
    }

    private void unpack(int[] to, int from, int until) {
        long place = bit;
        for (int i = from; i < until; i++) {
            long word = (long) LONG.get(bytes, (int) (place >>> 3));
            to[i] = (int) (word >>> (place & 7) & mask);
            place += width;
        }
        bit = place;
    }

    /** Begins the next run where one has ended; says how many of so many numbers are in this one. */
    private int enter(int wanted) throws IOException {
        while (left == 0) {
            int header = header();
            same = (header & 1) == 0;
            if (same) {
                left = header >>> 1;
                number = (int) ((long) LONG.get(bytes, at) & mask);
                at += (width + 7) / 8;
            } else {
                left = (long) (header >>> 1) * GROUP;
                bit = 8L * at;
                at += (int) Math.min(left / GROUP * width, end - at);
            }
        }
        return (int) Math.min(wanted, left);
    }

    private int header() throws IOException {
        int header = 0;
        for (int shift = 0; shift < MOST_BITS; shift += 7) {
            if (at >= end) {
                throw new IOException("packed numbers end too early");
            }
            byte part = bytes[at++];
            header |= (part & 0x7f) << shift;
            if (part >= 0) {
                return header;
            }
        }
        throw new IOException("a run of packed numbers is too long");
    }
}
