package org.tableweather.cli;

/** What the command's exit code says; listed by {@code --help}. */
final class ExitCodes {
    /** Done. */
    static final int DONE = 0;
    /** A fault of this program or of the machine. */
    static final int FAULT = 1;
    /** Used in a way that cannot be meant. */
    static final int USAGE = 2;
    /** The data are refused by the checks. */
    static final int REFUSED = 3;
    /** The server cannot be reached, or refuses. */
    static final int SERVER = 4;

    private ExitCodes() {}
}
