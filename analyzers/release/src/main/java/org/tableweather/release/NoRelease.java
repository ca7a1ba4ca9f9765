package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** There is no release at a path. */
public final class NoRelease extends IOException {
    private static final long serialVersionUID = 1;

    NoRelease(Path folder) {
        super(
                Files.exists(folder)
                        ? folder + " holds no " + Manifest.FILE + ", so it is no release: name the folder that holds it"
                        : "there is no folder " + folder + ": check the path");
    }
}
