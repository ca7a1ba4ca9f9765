package org.tableweather.schema.folder;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.IntPredicate;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/**
 * The marked points of {@code contacts.csv} by trial, in about 80 bytes each; at most {@link #MAX_POINTS}, so that they fit
 * the memory while the trials pass by.
 */
final class ContactPaths {
    /** Most marked points of a contribution. */
    static final int MAX_POINTS = 1_000_000;

    private static final Contact.Point[] POINTS = Contact.Point.values();
    private static final Rail[] RAILS = Rail.values();
    private static final int FIELDS = 7;

    private final Map<Key, Path> paths = new LinkedHashMap<>();
    private int[] seqs = new int[64];
    private int[] rows = new int[64];
    private int[] next = new int[64];
    private byte[] kinds = new byte[64];
    private double[] numbers = new double[64 * FIELDS];
    private String[] cameras = new String[64];
    private final IntPredicate wanted;
    private final int most;
    private int size;
    private boolean complete = true;

    /** Keeps the points of every session. */
    ContactPaths() {
        this(session -> true, MAX_POINTS);
    }

    /**
     * Keeps the points of some sessions.
     *
     * @param wanted position of a session
     * @param most points that are kept
     */
    ContactPaths(IntPredicate wanted, int most) {
        this.wanted = wanted;
        this.most = most;
    }

    private record Key(int session, String trial) {}

    /** The points of one trial. */
    static final class Path {
        private int first = -1;
        private int last = -1;
        private long firstRow;
        private boolean seen;
        private boolean damaged;

        /** Whether a row of it was refused. */
        boolean isDamaged() {
            return damaged;
        }
    }

    /** Adds a point of a trial. */
    void add(int session, Contact contact, long row) {
        if (!wanted.test(session)) {
            return;
        }
        if (size >= most) {
            complete = false;
            return;
        }
        if (size == seqs.length) {
            grow();
        }
        Path path = path(session, contact.trial(), row);
        seqs[size] = contact.seq();
        rows[size] = (int) Math.min(row, Integer.MAX_VALUE);
        int rail = contact.rail().map(Rail::ordinal).orElse(RAILS.length);
        kinds[size] = (byte) (contact.point().ordinal() * (RAILS.length + 1) + rail);
        double[] values = {
            contact.xDia(), contact.yDia(), contact.xM(), contact.yM(), contact.xPx(), contact.yPx(), contact.timeS()
        };
        cameras[size] = contact.camera();
        System.arraycopy(values, 0, numbers, size * FIELDS, FIELDS);
        next[size] = -1;
        if (path.last >= 0) {
            next[path.last] = size;
        } else {
            path.first = size;
        }
        path.last = size++;
    }

    /** Notes that a row of a trial's path was refused. */
    void damage(int session, String trial, long row) {
        if (!wanted.test(session)) {
            return;
        }
        path(session, trial, row).damaged = true;
    }

    private Path path(int session, String trial, long row) {
        Path path = paths.computeIfAbsent(new Key(session, trial), key -> new Path());
        path.firstRow = path.firstRow == 0 ? row : path.firstRow;
        return path;
    }

    private void grow() {
        int longer = size * 2;
        seqs = Arrays.copyOf(seqs, longer);
        rows = Arrays.copyOf(rows, longer);
        next = Arrays.copyOf(next, longer);
        kinds = Arrays.copyOf(kinds, longer);
        cameras = Arrays.copyOf(cameras, longer);
        numbers = Arrays.copyOf(numbers, longer * FIELDS);
    }

    /** The path of a trial; null without. The trial is then known to be there. */
    Path see(int session, String trial) {
        Path path = paths.get(new Key(session, trial));
        if (path != null) {
            path.seen = true;
        }
        return path;
    }

    /** Tells the session, trial and first row of each path whose trial was not seen. */
    void unseen(PathTaker taker) {
        paths.forEach((key, path) -> {
            if (!path.seen) {
                taker.take(key.session(), key.trial(), path.firstRow);
            }
        });
    }

    /** Whether no point that was wanted is left out. */
    boolean isComplete() {
        return complete;
    }

    /** Hands over each sound path of a session, with its trial, in the order of the file. */
    void each(int session, BiConsumer<String, Path> taker) {
        paths.forEach((key, path) -> {
            if (key.session() == session && !path.damaged) {
                taker.accept(key.trial(), path);
            }
        });
    }

    /** Takes a path. */
    interface PathTaker {
        /** Session, trial, first row. */
        void take(int session, String trial, long row);
    }

    /**
     * The points of a path in the order of the file.
     *
     * @param rowOf told seq and row of each
     */
    List<Contact> contacts(Path path, String session, String trial, BiConsumer<Integer, Integer> rowOf) {
        List<Contact> contacts = new ArrayList<>();
        for (int i = path.first; i >= 0; i = next[i]) {
            int rail = kinds[i] % (RAILS.length + 1);
            int at = i * FIELDS;
            contacts.add(new Contact(
                    session,
                    trial,
                    seqs[i],
                    POINTS[kinds[i] / (RAILS.length + 1)],
                    rail == RAILS.length ? Optional.empty() : Optional.of(RAILS[rail]),
                    numbers[at],
                    numbers[at + 1],
                    numbers[at + 2],
                    numbers[at + 3],
                    numbers[at + 4],
                    numbers[at + 5],
                    cameras[i],
                    numbers[at + 6]));
            rowOf.accept(seqs[i], rows[i]);
        }
        return contacts;
    }
}
