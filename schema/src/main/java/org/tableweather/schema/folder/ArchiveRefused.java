package org.tableweather.schema.folder;

import java.io.IOException;
import org.tableweather.schema.check.Finding;

/** An archive that is unsafe or damaged; carries the finding. */
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

    /** Which check refused it. */
    public Finding finding() {
        return finding;
    }
}
