package org.tableweather.schema.csv;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CodingErrorAction;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongConsumer;

/** A separated text being read: its dialect is guessed from its beginning, then its rows are handed over. */
public final class CsvText {
    private static final int HEAD = 1 << 16;
    private static final int MAX_CELL_CHARS = 1 << 20;

    private final Dialect dialect;
    private final Counted content;
    private final boolean empty;

    private CsvText(Dialect dialect, Counted content, boolean empty) {
        this.dialect = dialect;
        this.content = content;
        this.empty = empty;
    }

    /** A text that breaks the rules of quoting. */
    public static final class Broken extends Exception {
        private static final long serialVersionUID = 1L;
        private final long row;

        Broken(String message, long row) {
            super(message);
            this.row = row;
        }

        /** Where it broke. */
        public long row() {
            return row;
        }
    }

    /**
     * Looks at the beginning.
     *
     * @param input the file; closed by its owner
     * @param known column names in lower case that help to guess the separator
     * @param progress told the bytes read so far, now and then
     * @throws IOException when it cannot be read
     */
    public static CsvText open(InputStream input, Set<String> known, LongConsumer progress) throws IOException {
        return open(input, head -> Dialect.of(head, head.length, known), progress);
    }

    /**
     * Looks at the beginning.
     *
     * @param input the file; closed by its owner
     * @param guess the dialect, from the first bytes
     * @param progress told the bytes read so far, now and then
     * @throws IOException when it cannot be read
     */
    public static CsvText open(InputStream input, Function<byte[], Dialect> guess, LongConsumer progress)
            throws IOException {
        byte[] head = input.readNBytes(HEAD);
        Dialect dialect = guess.apply(head);
        InputStream start = new ByteArrayInputStream(head, dialect.markLength(), head.length - dialect.markLength());
        InputStream content = head.length < HEAD ? start : new SequenceInputStream(start, input);
        Counted counted = new Counted(content, dialect.markLength(), progress);
        return new CsvText(dialect, counted, head.length == dialect.markLength());
    }

    /** How it is written. */
    public Dialect dialect() {
        return dialect;
    }

    /** Whether it has no content at all. */
    public boolean isEmpty() {
        return empty;
    }

    /** Whether its last line was ended; asked after reading. */
    public boolean endsWithLineEnd() {
        return content.last == '\n' || content.last == '\r' || content.last == 0;
    }

    /**
     * Reads it to the end. Bytes that are no characters arrive as U+FFFD.
     *
     * @param handler takes the rows
     * @return whether there was a header
     * @throws Broken when quotes are not closed, or a cell has no end
     * @throws IOException when it cannot be read, or the handler fails
     */
    public boolean read(RowHandler handler) throws IOException, Broken {
        Reader characters = new InputStreamReader(
                content,
                dialect.charset()
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
        try (CsvReader<RowHandler> csv = CsvReader.builder()
                .fieldSeparator(dialect.separator())
                .skipEmptyLines(false)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .maxBufferSize(MAX_CELL_CHARS)
                .build(handler, characters)) {
            if (dialect.separatorLine()) {
                csv.skipLines(1);
                handler.skipRow();
            }
            for (RowHandler row : csv) {
                row.finish();
            }
            return handler.hasHeader();
        } catch (CsvParseException e) {
            throw broken(e, handler.row());
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Broken broken(CsvParseException e, long row) {
        Throwable cause = e.getCause() == null ? e : e.getCause();
        return new Broken(String.valueOf(cause.getMessage()), row);
    }

    /** Counts bytes, tells of them now and then, and remembers the last. */
    private static final class Counted extends FilterInputStream {
        private static final long STEP = 1 << 20;
        private final LongConsumer progress;
        private long read;
        private long told;
        private int last = '\n';

        Counted(InputStream in, long read, LongConsumer progress) {
            super(in);
            this.read = read;
            this.progress = progress;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int count = super.read(buffer, offset, length);
            if (count > 0) {
                last = buffer[offset + count - 1];
                read += count;
            }
            if (read - told >= STEP || count < 0) {
                told = read;
                progress.accept(read);
            }
            return count;
        }
    }
}
