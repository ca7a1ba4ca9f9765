package org.tableweather.analyzers.host.plugin;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.tableweather.analyzers.spi.ConclusionListener;

/** Writes an analyzer's words of progress to its host, some times a second, from whatever thread, until it is closed. */
final class WorkingWords implements ConclusionListener, AutoCloseable {
    private static final long BETWEEN_NANOS = 100_000_000;

    private final PluginProcess.Words words;
    private long next = System.nanoTime();
    private boolean closed;

    WorkingWords(PluginProcess.Words words) {
        this.words = words;
    }

    @Override
    public synchronized void at(String what, int done, int total) {
        if (closed || System.nanoTime() - next < 0) {
            return;
        }
        next = System.nanoTime() + BETWEEN_NANOS;
        try {
            words.write(PluginJson.MAPPER.writeValueAsBytes(Reply.working(what, done, total)));
        } catch (IOException e) {
            throw new UncheckedIOException("the host no longer listens", e);
        }
    }

    /** What an analyzer's own threads tell from here on is not heard. */
    @Override
    public synchronized void close() {
        closed = true;
    }
}
