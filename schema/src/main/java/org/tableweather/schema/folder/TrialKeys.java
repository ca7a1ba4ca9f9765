package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.Arrays;
import org.tableweather.schema.record.Trial;

/** Remembers which trials there are, in 8 bytes each: by a 64-bit hash, so that a wrong yes is as good as impossible. */
final class TrialKeys {
    private long[] keys = new long[1024];
    private int size;
    private boolean sorted = true;

    private void add(int session, String trial) {
        if (size == keys.length) {
            keys = Arrays.copyOf(keys, size + (size >> 1));
        }
        keys[size++] = key(session, trial);
        sorted = false;
    }

    /** A receiver that remembers each trial before it passes it on. */
    TrialRows.Receiver before(TrialRows.Receiver next) {
        return new TrialRows.Receiver() {
            @Override
            public void refused(int session) {
                next.refused(session);
            }

            @Override
            public void accept(int session, Trial trial, long row) throws IOException {
                add(session, trial.trial());
                next.accept(session, trial, row);
            }
        };
    }

    boolean contains(int session, String trial) {
        if (!sorted) {
            Arrays.sort(keys, 0, size);
            sorted = true;
        }
        return Arrays.binarySearch(keys, 0, size, key(session, trial)) >= 0;
    }

    /** FNV-1a over the id, then mixed with the session. */
    private static long key(int session, String trial) {
        long hash = 0xcbf29ce484222325L;
        for (int i = 0; i < trial.length(); i++) {
            hash = (hash ^ trial.charAt(i)) * 0x100000001b3L;
        }
        hash ^= session * 0x9E3779B97F4A7C15L;
        hash = (hash ^ hash >>> 32) * 0xD6E8FEB86659FD93L;
        return hash ^ hash >>> 32;
    }
}
