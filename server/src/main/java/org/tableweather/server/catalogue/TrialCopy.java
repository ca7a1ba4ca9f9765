package org.tableweather.server.catalogue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;
import org.tableweather.schema.record.Trial;

/**
 * COPY of trials while they are still being read: a second thread encodes and sends what the reading thread hands over.
 * The queue is bounded, so neither gets far ahead.
 */
final class TrialCopy {
    private static final String SQL =
            "COPY trial (session_id, ordinal, " + TrialColumn.sqlNames() + ") FROM STDIN (FORMAT binary)";
    private static final int BATCH_ROWS = 4096;
    private static final int QUEUED_BATCHES = 6;
    private static final int SEND_BYTES = 1 << 18;
    private static final Logger LOG = Logger.getLogger(TrialCopy.class);
    private static final Batch END = new Batch(new int[0], new int[0], List.of());

    private final CopyIn copy;
    private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(QUEUED_BATCHES);
    private final Thread sender;
    private volatile Throwable failure;
    private List<Trial> trials = new ArrayList<>(BATCH_ROWS);
    private int[] sessionIds = new int[BATCH_ROWS];
    private int[] ordinals = new int[BATCH_ROWS];

    /** Rows on their way. */
    private record Batch(int[] sessionIds, int[] ordinals, List<Trial> trials) {}

    private TrialCopy(CopyIn copy) {
        this.copy = copy;
        this.sender = new Thread(this::send, "trial-copy");
        this.sender.setDaemon(true);
        this.sender.start();
    }

    /**
     * Opens the copy. Nothing else may use the connection until it has ended.
     *
     * @param connection in a transaction
     * @throws SQLException when the database refuses
     */
    static TrialCopy open(Connection connection) throws SQLException {
        return new TrialCopy(connection.unwrap(PGConnection.class).getCopyAPI().copyIn(SQL));
    }

    /**
     * Hands over a row.
     *
     * @throws IOException when the copy has failed
     * @throws UnstorableValue when it failed at a value
     */
    void add(int sessionId, int ordinal, Trial trial) throws IOException {
        int n = trials.size();
        sessionIds[n] = sessionId;
        ordinals[n] = ordinal;
        trials.add(trial);
        if (trials.size() == BATCH_ROWS) {
            handOver();
        }
    }

    private void handOver() throws IOException {
        put(new Batch(sessionIds, ordinals, trials));
        trials = new ArrayList<>(BATCH_ROWS);
        sessionIds = new int[BATCH_ROWS];
        ordinals = new int[BATCH_ROWS];
    }

    private void put(Batch batch) throws IOException {
        try {
            while (!queue.offer(batch, 100, TimeUnit.MILLISECONDS)) {
                throwFailure();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while storing", e);
        }
        throwFailure();
    }

    /**
     * Sends what is left and ends the copy.
     *
     * @return rows stored
     */
    long finish() throws IOException, SQLException {
        handOver();
        put(END);
        join();
        throwFailure();
        return copy.endCopy();
    }

    /** Gives the copy up, if it has not ended; the connection can be used then, and its transaction rolled back. */
    void abandon() {
        if (failure == null) {
            failure = new IOException("given up");
        }
        sender.interrupt();
        join();
        try {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        } catch (SQLException e) {
            // a broken connection has ended the copy and the transaction with it
            LOG.debug("copy not cancelled", e);
        }
    }

    private void join() {
        boolean interrupted = false;
        while (sender.isAlive()) {
            try {
                sender.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void throwFailure() throws IOException {
        if (failure instanceof UnstorableValue value) {
            throw value;
        }
        if (failure != null) {
            throw new IOException("the trials could not be stored: " + failure.getMessage(), failure);
        }
    }

    private void send() {
        try {
            TrialEncoder encoder = new TrialEncoder();
            encoder.header();
            for (Batch batch = queue.take(); batch != END && failure == null; batch = queue.take()) {
                send(encoder, batch);
            }
            encoder.trailer();
            flush(encoder);
        } catch (SQLException | RuntimeException | Error e) {
            failure = e;
        } catch (InterruptedException e) {
            if (failure == null) {
                failure = e;
            }
        }
    }

    private void send(TrialEncoder encoder, Batch batch) throws SQLException {
        List<Trial> rows = batch.trials();
        for (int i = 0; i < rows.size(); i++) {
            encoder.row(batch.sessionIds()[i], batch.ordinals()[i], rows.get(i));
            if (encoder.length() >= SEND_BYTES) {
                flush(encoder);
            }
        }
    }

    private void flush(TrialEncoder encoder) throws SQLException {
        copy.writeToCopy(encoder.bytes(), 0, encoder.length());
        encoder.clear();
    }
}
