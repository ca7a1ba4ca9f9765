package org.tableweather.release;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.Optional;

/**
 * A contribution, as a release names it.
 *
 * @param id its identity: lower-case letters, digits, dash, dot and underscore; names the file of its check report
 * @param title in words
 * @param licence SPDX id
 * @param contributor the name they chose
 * @param orcid ORCID iD
 * @param invented whether the data are made up for demonstration
 * @param archiveSha256 of the archive that was contributed, hex
 * @param checkReportJson the check report as JSON; kept in a file of its own
 */
public record ReleasedContribution(
        String id,
        Optional<String> title,
        String licence,
        String contributor,
        Optional<String> orcid,
        boolean invented,
        String archiveSha256,
        @JsonIgnore String checkReportJson) {
    private static final String ID = "[a-z0-9][a-z0-9._-]{0,99}";

    public ReleasedContribution {
        if (!id.matches(ID)) {
            throw new IllegalArgumentException("the id of a contribution must match " + ID + ", got " + id);
        }
        checkReportJson = checkReportJson == null ? "" : checkReportJson;
    }
}
