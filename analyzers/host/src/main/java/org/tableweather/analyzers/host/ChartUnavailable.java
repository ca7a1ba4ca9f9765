package org.tableweather.analyzers.host;

/** A chart cannot be drawn; the message says why and what helps. */
public final class ChartUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    ChartUnavailable(String message) {
        super(message);
    }

    ChartUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
