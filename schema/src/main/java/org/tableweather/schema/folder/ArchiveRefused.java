package org.tableweather.schema.folder;

import java.io.IOException;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;

/** An archive, or a folder, that is unsafe or damaged; carries the finding. */
public final class ArchiveRefused extends IOException {
    private static final long serialVersionUID = 1L;
    private final transient Finding finding;

    /**
     * Refuses.
     *
     * @param finding which check, with value, bound and remedy
     */
    public ArchiveRefused(Finding finding) {
        super(finding.message());
        this.finding = finding;
    }

    static ArchiveRefused because(Check check, Place place, String value, String message) {
        return new ArchiveRefused(Findings.one(check, place, value, message));
    }

    /** Which check refused it. */
    public Finding finding() {
        return finding;
    }
}
