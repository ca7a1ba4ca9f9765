package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Off unless {@code tableweather.fault-file} names a file: then the server halts, without any clean-up, at the point whose
 * name stands in it. For tests of what survives.
 */
@ApplicationScoped
class Faults {
    private static final Logger LOG = Logger.getLogger(Faults.class);
    private static final int KILLED = 137;
    private static final String OFF = "none";

    private final Optional<Path> file;

    Faults(@ConfigProperty(name = "tableweather.fault-file") String file) {
        this.file = file.equals(OFF) ? Optional.empty() : Optional.of(Path.of(file));
        this.file.ifPresent(path -> LOG.warnf("faults are on: this server halts where %s says", path));
    }

    /** Halts here if told so. */
    void at(FaultPoint point) {
        if (file.isPresent() && isArmed(file.get(), point)) {
            Runtime.getRuntime().halt(KILLED);
        }
    }

    private static boolean isArmed(Path file, FaultPoint point) {
        try {
            return Files.exists(file) && Files.readString(file).strip().equals(point.name());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
