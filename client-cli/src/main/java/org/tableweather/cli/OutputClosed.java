package org.tableweather.cli;

/** Whoever read the results has gone ({@code | head}); there is nothing more to do. */
final class OutputClosed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OutputClosed() {
        super("standard output is closed");
    }
}
