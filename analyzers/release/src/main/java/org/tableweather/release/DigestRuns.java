package org.tableweather.release;

import java.io.IOException;
import java.util.stream.IntStream;

/** The digests of a run's rows: how many rows of a session stand together. */
final class DigestRuns {
    private static final int BLOCK = 1 << 10;
    private static final int[] PLACES = IntStream.range(0, BLOCK).toArray();

    private final TextCells cells;
    private final String[] digests = new String[BLOCK];
    private long left;
    private int at;
    private int there;

    DigestRuns(int column) {
        cells = new TextCells(column);
    }

    void enter(RowGroups groups) throws IOException {
        cells.enter(groups);
        left = groups.rows();
        at = 0;
        there = 0;
    }

    /** The digest of the next row; empty after the last of the row group. */
    String digest() throws IOException {
        if (at == there) {
            if (left == 0) {
                return "";
            }
            there = (int) Math.min(left, BLOCK);
            cells.take(digests, PLACES, there);
            left -= there;
            at = 0;
        }
        return digests[at];
    }

    /** Goes over all rows of the same digest; says how many. */
    int takeSame() throws IOException {
        String digest = digest();
        int count = 0;
        while (digest().equals(digest)) {
            count++;
            at++;
        }
        return count;
    }
}
