package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.parquet.io.OutputFile;
import org.apache.parquet.io.PositionOutputStream;
import org.tableweather.schema.folder.SessionDigest;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Trials in one Parquet file that stands alone: beside the columns of a release's trials every row names its session as JSON
 * and says how many trials that has in all.
 */
public final class TrialParquet {
    private TrialParquet() {}

    /** Writes trials, those of a session one after the other. Memory holds one row group. */
    public static final class Writer implements Closeable {
        private final TableWriter<TrialRow> table;
        private SessionRecord session;
        private String json = "";
        private int ordinal;

        private Writer(TableWriter<TrialRow> table) {
            this.table = table;
        }

        /**
         * Adds a row.
         *
         * @param of the session it belongs to; the same object for all its rows is fastest
         * @param sessionTrials trials of the whole session, written here or not
         * @param trial the attempt
         */
        public void write(SessionRecord of, int sessionTrials, Trial trial) throws IOException {
            if (session == null || session != of && !session.digest().equals(of.digest())) {
                session = of;
                json = SessionJson.write(of);
                ordinal = 0;
            }
            ordinal++;
            table.write(new TrialRow(of, json, sessionTrials, ordinal, trial));
        }

        /** Writes the footer and closes the stream. */
        @Override
        public void close() throws IOException {
            table.close();
        }
    }

    /**
     * Opens a file for writing to a stream, which need not be seekable.
     *
     * @param to closed with the writer
     */
    public static Writer writer(OutputStream to) throws IOException {
        return new Writer(
                TableWriter.open(TrialTable.ALONE, Set.of(), Map.of(), ZstdCodec.standard(), new StreamFile(to)));
    }

    /**
     * Reads a file session by session. A session of which only a part is there has the digest of that part: its content is
     * another.
     *
     * @param file as {@link #writer} made it
     * @param sink takes each session with its trials in {@link Trial#CANONICAL_ORDER}, in the order of the file
     * @throws IOException when it is no such file, its rows are scattered, or the sink fails
     */
    public static void sessions(Path file, SessionSink sink) throws IOException {
        try (TrialRows rows = new TrialRows(file, 0, Long.MAX_VALUE)) {
            if (!rows.holdsSessions()) {
                throw new IOException(
                        file + " does not say what its sessions are: name the folder of the release that it is"
                                + " part of, or ask for trials as Parquet again");
            }
            Set<String> seen = new HashSet<>();
            boolean more = rows.next();
            while (more) {
                String digest = rows.digest();
                if (!seen.add(digest)) {
                    throw new IOException(file + ": the rows of session " + rows.sessionKey()
                            + " do not stand together: sort them by session_key");
                }
                SessionRecord session = SessionJson.read(rows.sessionJson(), file.toString());
                int all = rows.sessionTrials();
                List<Trial> trials = new ArrayList<>();
                while (more && rows.digest().equals(digest)) {
                    trials.add(rows.trial());
                    more = rows.next();
                }
                trials.sort(Trial.CANONICAL_ORDER);
                sink.accept(trials.size() == all ? session : part(session, trials), trials);
            }
        }
    }

    /** A session of which only some trials are there: its content is another. */
    static SessionRecord part(SessionRecord session, List<Trial> trials) {
        return new SessionRecord(
                session.roomKey(),
                session.sessionKey(),
                SessionDigest.of(session, trials),
                session.invented(),
                session.room(),
                session.table(),
                session.session(),
                session.ballSet(),
                session.cue(),
                session.instrument());
    }

    /** A stream as Parquet wants it. */
    private record StreamFile(OutputStream to) implements OutputFile {
        @Override
        public PositionOutputStream create(long blockSizeHint) {
            return new Counted(to);
        }

        @Override
        public PositionOutputStream createOrOverwrite(long blockSizeHint) {
            return new Counted(to);
        }

        @Override
        public boolean supportsBlockSize() {
            return false;
        }

        @Override
        public long defaultBlockSize() {
            return 0;
        }
    }

    private static final class Counted extends PositionOutputStream {
        private final OutputStream to;
        private long position;

        Counted(OutputStream to) {
            this.to = to;
        }

        @Override
        public long getPos() {
            return position;
        }

        @Override
        public void write(int b) throws IOException {
            to.write(b);
            position++;
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            to.write(bytes, from, length);
            position += length;
        }

        @Override
        public void flush() throws IOException {
            to.flush();
        }

        @Override
        public void close() throws IOException {
            to.close();
        }
    }
}
