package org.tableweather.release;

import java.io.DataInput;
import java.io.DataInputStream;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * Takes rows in any order and gives those of a key back in order, equal ones as they came. They are sorted in runs of at most
 * {@value #RUN} rows, which wait on disk in blocks and are merged: memory holds one run, or one block of each.
 *
 * @param <K> what rows belong to
 * @param <R> the row
 */
final class SortedSpill<K, R> {
    private static final int RUN = 1 << 15;
    private static final int BLOCK = 1 << 9;

    private final Spill spill;
    private final Codec<K, R> codec;
    private final Comparator<R> order;
    private final Map<K, List<R>> waiting = new LinkedHashMap<>();
    private final Map<K, List<List<Spill.Extent>>> runs = new HashMap<>();
    private int waits;

    SortedSpill(Spill spill, Codec<K, R> codec, Comparator<R> order) {
        this.spill = spill;
        this.codec = codec;
        this.order = order;
    }

    /** How a row lies on disk. */
    interface Codec<K, R> {
        void write(R row, DataOutput to) throws IOException;

        /** The same row again, of this key. */
        R read(K key, DataInput from) throws IOException;
    }

    /** Takes rows. */
    interface Rows<R> {
        void row(R row) throws IOException;
    }

    void put(K key, R row) throws IOException {
        waiting.computeIfAbsent(key, one -> new ArrayList<>()).add(row);
        if (++waits == RUN) {
            flush();
        }
    }

    /** Whether there is any row of a key. */
    boolean has(K key) {
        return waiting.containsKey(key) || runs.containsKey(key);
    }

    private void flush() throws IOException {
        for (Map.Entry<K, List<R>> one : waiting.entrySet()) {
            one.getValue().sort(order);
            runs.computeIfAbsent(one.getKey(), key -> new ArrayList<>(1)).add(written(one.getValue()));
        }
        waiting.clear();
        waits = 0;
    }

    private List<Spill.Extent> written(List<R> rows) throws IOException {
        List<Spill.Extent> blocks = new ArrayList<>();
        for (int from = 0; from < rows.size(); from += BLOCK) {
            List<R> block = rows.subList(from, Math.min(rows.size(), from + BLOCK));
            blocks.add(spill.put(to -> {
                to.writeInt(block.size());
                for (R row : block) {
                    codec.write(row, to);
                }
            }));
        }
        return List.copyOf(blocks);
    }

    /** Hands over all rows of a key in order; it may be asked for again. */
    void each(K key, Rows<R> to) throws IOException {
        flush();
        PriorityQueue<Head> heads = new PriorityQueue<>();
        for (List<Spill.Extent> run : runs.getOrDefault(key, List.of())) {
            heads.add(new Head(key, run, heads.size()));
        }
        while (!heads.isEmpty()) {
            Head first = heads.poll();
            to.row(first.row);
            if (first.advance()) {
                heads.add(first);
            }
        }
    }

    /** The first row of a run that was not handed over yet. */
    private final class Head implements Comparable<Head> {
        private final K key;
        private final List<Spill.Extent> blocks;
        private final int number;
        private DataInputStream in;
        private int next;
        private int left;
        private R row;

        Head(K key, List<Spill.Extent> blocks, int number) throws IOException {
            this.key = key;
            this.blocks = blocks;
            this.number = number;
            advance();
        }

        boolean advance() throws IOException {
            if (left == 0) {
                if (next == blocks.size()) {
                    return false;
                }
                in = spill.take(blocks.get(next++));
                left = in.readInt();
            }
            row = codec.read(key, in);
            left--;
            return true;
        }

        @Override
        public int compareTo(Head other) {
            int byRow = order.compare(row, other.row);
            return byRow != 0 ? byRow : Integer.compare(number, other.number);
        }
    }
}
