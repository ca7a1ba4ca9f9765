package org.tableweather.cli;

import org.tableweather.analyzers.spi.ConclusionListener;

/** A bar for each part of a long conclusion, shown only to a person at a terminal. */
final class ConclusionLine implements ConclusionListener, AutoCloseable {
    private final Terminal terminal;
    private ProgressLine line = new ProgressLine.Silent();
    private String shown = "";

    ConclusionLine(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public synchronized void at(String what, int done, int total) {
        if (!what.equals(shown)) {
            line.close();
            line = ProgressLine.ofParts(terminal, what, total);
            shown = what;
        }
        line.accept(done);
    }

    @Override
    public synchronized void close() {
        line.close();
    }
}
