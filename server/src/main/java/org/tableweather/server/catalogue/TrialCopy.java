package org.tableweather.server.catalogue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;

/**
 * COPY of trials while they are still being read: a second thread encodes and sends what the reading thread hands over.
 * The queue is bounded, so neither gets far ahead. Only the columns that some row fills are sent; when a row fills another
 * one, the copy ends and a wider one begins, in the same transaction.
 */
final class TrialCopy {
    private static final Logger LOG = Logger.getLogger(TrialCopy.class);
    /** So few that a batch still lies in the processor's cache when it is encoded. */
    private static final int BATCH_ROWS = 256;

    private static final int QUEUED_BATCHES = 16;
    private static final int SEND_BYTES = 1 << 18;
    private static final Batch END = new Batch(new int[0], new int[0], List.of());

    private final Connection connection;
    private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(QUEUED_BATCHES);
    private final Thread sender = new Thread(this::send, "trial-copy");
    private final TrialEncoder encoder = new TrialEncoder();
    private final EnumSet<TrialColumn> filled = EnumSet.noneOf(TrialColumn.class);
    private List<TrialColumn> columns = List.of();
    private CopyIn copy;
    private long sent;
    private volatile Throwable failure;
    private List<Trial> trials = new ArrayList<>(BATCH_ROWS);
    private int[] sessionIds = new int[BATCH_ROWS];
    private int[] ordinals = new int[BATCH_ROWS];

    /** Rows on their way. */
    private record Batch(int[] sessionIds, int[] ordinals, List<Trial> trials) {}

    private TrialCopy(Connection connection) {
        this.connection = connection;
        sender.setDaemon(true);
    }

    /**
     * Begins. Nothing else may use the connection until the copy has ended.
     *
     * @param connection in a transaction
     */
    static TrialCopy open(Connection connection) {
        TrialCopy copy = new TrialCopy(connection);
        copy.sender.start();
        return copy;
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
     * Sends what is left and ends.
     *
     * @return rows stored
     * @throws IOException when the copy has failed
     */
    long finish() throws IOException {
        handOver();
        put(END);
        join();
        throwFailure();
        return sent;
    }

    /** Gives the copy up, if it has not ended; the connection can be used then, and its transaction rolled back. */
    void abandon() {
        if (failure == null) {
            failure = new IOException("given up");
        }
        sender.interrupt();
        join();
        try {
            if (copy != null && copy.isActive()) {
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
            for (Batch batch = queue.take(); batch != END && failure == null; batch = queue.take()) {
                widen(batch.trials());
                send(batch);
            }
            end();
        } catch (SQLException | RuntimeException | Error e) {
            failure = e;
        } catch (InterruptedException e) {
            if (failure == null) {
                failure = e;
            }
        }
    }

    /** Makes sure that a copy is open that has every column that these rows fill. */
    private void widen(List<Trial> rows) throws SQLException {
        int before = filled.size();
        // most contributions state none: thirteen columns need no look then
        boolean uncertain = rows.stream().anyMatch(row -> row.uncertainty() != OutcomeUncertainty.NONE);
        for (TrialColumn column : EnumSet.complementOf(filled)) {
            if ((uncertain || !column.isUncertainty()) && isFilled(column.field(), rows)) {
                filled.add(column);
            }
        }
        if (filled.size() > before) {
            end();
            columns = List.copyOf(filled);
            copy = connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn("COPY trial (session_id, ordinal, " + TrialColumn.sqlNames(columns)
                            + ") FROM STDIN (FORMAT binary)");
            encoder.header();
        }
    }

    private static boolean isFilled(TrialField field, List<Trial> rows) {
        for (Trial row : rows) {
            if (field.isPresent(row)) {
                return true;
            }
        }
        return false;
    }

    private void send(Batch batch) throws SQLException {
        List<Trial> rows = batch.trials();
        for (int i = 0; i < rows.size(); i++) {
            encoder.row(batch.sessionIds()[i], batch.ordinals()[i], rows.get(i), columns);
            if (encoder.length() >= SEND_BYTES) {
                flush();
            }
        }
    }

    private void end() throws SQLException {
        if (copy != null) {
            encoder.trailer();
            flush();
            sent += copy.endCopy();
        }
    }

    private void flush() throws SQLException {
        copy.writeToCopy(encoder.bytes(), 0, encoder.length());
        encoder.clear();
    }
}
