package org.tableweather.release;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Shot;

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
 * @param shots its own definitions beside the catalogue's; kept in a file of their own
 * @param marks known points on the frames of its cameras; kept in a file of their own
 */
public record ReleasedContribution(
        String id,
        Optional<String> title,
        String licence,
        String contributor,
        Optional<String> orcid,
        boolean invented,
        String archiveSha256,
        @JsonIgnore String checkReportJson,
        @JsonIgnore List<Shot> shots,
        @JsonIgnore List<CameraMarks> marks) {
    private static final String ID = "[a-z0-9][a-z0-9._-]{0,99}";

    public ReleasedContribution {
        if (!id.matches(ID)) {
            throw new IllegalArgumentException("the id of a contribution must match " + ID + ", got " + id);
        }
        checkReportJson = checkReportJson == null ? "" : checkReportJson;
        shots = shots == null ? List.of() : List.copyOf(shots);
        marks = marks == null ? List.of() : List.copyOf(marks);
    }

    /** One without shots and cameras of its own. */
    public ReleasedContribution(
            String id,
            Optional<String> title,
            String licence,
            String contributor,
            Optional<String> orcid,
            boolean invented,
            String archiveSha256,
            String checkReportJson) {
        this(id, title, licence, contributor, orcid, invented, archiveSha256, checkReportJson, List.of(), List.of());
    }

    /** The same with shots of its own. */
    public ReleasedContribution withShots(List<Shot> own) {
        return new ReleasedContribution(
                id, title, licence, contributor, orcid, invented, archiveSha256, checkReportJson, own, marks);
    }
}
