package org.tableweather.cli;

/** Why a command ends early: one line, one remedy, one exit code. */
final class Failure extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int exitCode;
    private final String remedy;

    private Failure(int exitCode, String message, String remedy, Throwable cause) {
        super(message, cause);
        this.exitCode = exitCode;
        this.remedy = remedy;
    }

    /** The user asked for something that cannot be meant. */
    static Failure usage(String message, String remedy) {
        return new Failure(ExitCodes.USAGE, message, remedy, null);
    }

    /** The machine, or this program, failed. */
    static Failure fault(String message, String remedy) {
        return new Failure(ExitCodes.FAULT, message, remedy, null);
    }

    /** The checks refuse the data. */
    static Failure refused(String message, String remedy) {
        return new Failure(ExitCodes.REFUSED, message, remedy, null);
    }

    /** The server cannot be reached, or refuses. */
    static Failure server(String message, String remedy) {
        return new Failure(ExitCodes.SERVER, message, remedy, null);
    }

    /** The same with what caused it, for {@code --verbose}. */
    Failure because(Throwable cause) {
        return new Failure(exitCode, getMessage(), remedy, cause);
    }

    int exitCode() {
        return exitCode;
    }

    /** What to do; may be empty. */
    String remedy() {
        return remedy;
    }
}
