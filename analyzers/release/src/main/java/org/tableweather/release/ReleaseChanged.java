package org.tableweather.release;

import java.io.IOException;

/** A release, or what of it is read, is not as it was released. */
public final class ReleaseChanged extends IOException {
    private static final long serialVersionUID = 1;

    ReleaseChanged(String message) {
        super(message + ": fetch the release anew");
    }
}
