package org.tableweather.server.catalogue;

/** A value that passed the checks but that the database has no place for. */
final class UnstorableValue extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnstorableValue(String message, Throwable cause) {
        super(message, cause);
    }
}
