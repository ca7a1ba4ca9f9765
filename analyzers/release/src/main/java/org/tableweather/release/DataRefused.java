package org.tableweather.release;

import java.io.IOException;
import java.nio.file.Path;
import org.tableweather.schema.check.CheckReport;

/** A contribution does not pass the checks, so it cannot enter a release. */
public final class DataRefused extends IOException {
    private static final long serialVersionUID = 1;

    private final transient CheckReport report;

    DataRefused(Path path, CheckReport report) {
        super(path + " does not pass the checks: run `tableweather check " + path + "` and mend what it names");
        this.report = report;
    }

    /** What the checks found. */
    public CheckReport report() {
        return report;
    }
}
