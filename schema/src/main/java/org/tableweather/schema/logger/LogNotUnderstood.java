package org.tableweather.schema.logger;

/** A log that cannot be imported as it is; the message says why, and what would help. */
public final class LogNotUnderstood extends Exception {
    private static final long serialVersionUID = 1L;

    LogNotUnderstood(String message) {
        super(message);
    }
}
