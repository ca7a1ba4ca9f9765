package org.tableweather.release;

import java.util.List;

/**
 * The page {@code README.md} of a release: what it is and how it is read, for people who have nothing but the folder.
 *
 * @param manifest of the release
 * @param files in it
 */
record ReleaseReadme(Manifest manifest, List<Manifest.FileEntry> files) {
    private static final String READINGS = """
            The climate around each session, from its instrument's readings, which are as read: no calibration is applied.
            `placement` says where the sensor was; what is placed at `bed`, `outdoor`, `outdoors` or `outside` is not the room's air.
            A log that was contributed twice stands under both contributions: choose one to draw a room over time.

                SELECT s.session_key, avg(r.rh_pct), count(*)
                FROM read_parquet('sessions/*/*.parquet') s JOIN read_parquet('readings/*/*.parquet') r
                  ON r.room_key = s.room_key AND r.contribution = s.contribution AND r.instrument = s.instrument
                 AND r.read_at BETWEEN s.first_trial_at AND s.last_trial_at
                GROUP BY s.session_key;

            """;

    private static final String CONTACTS = """
            Marked points belong to the trial of the same `session_digest` and `trial`. A point is given in diamonds, in metres, or in
            pixels of the frame of `camera`, whose known points are in the file of the session's contribution in `cameras/`.

            """;

    String markdown() {
        Citation citation = new Citation(manifest);
        return "# " + citation.title() + "\n\n" + citation.description() + "\n\nReleased on " + manifest.date()
                + ". Cite it as `CITATION.txt` says.\n\n"
                + """
                ## What lies here

                | file | what |
                | --- | --- |
                | `trials/kind=*/room_group=*/part-0.parquet` | one row an attempt, sorted by shot, room, session, trial |
                | `sessions/room_group=*/part-0.parquet` | one row a session: room, table, cloth, dates, range of the climate, and `record`, all that is known of it as JSON |
                %s| `manifest.json` | every file with its SHA-256, length and number of rows; `manifest.sha256` is the hash of it |
                | `changes.json` | contributions added, withdrawn and kept since the release before |
                | `shots/catalogue.json`, `shots/contributions/*.json` | what the shot ids of the trials mean: the built-in catalogue at this release, and contributors' own shots, which go before it for the trials of that contribution |
                %s| `reports/*.json` | what the checks found in each contribution |
                | `LICENCES.md`, `CITATION.txt`, `CITATION.cff`, `datacite.json`, `ro-crate-metadata.json` | licences, citation, metadata |

                ## How it is read

                The tables are Apache Parquet, compressed with Zstandard; any reader of Parquet takes the folder as one table with
                the additional columns `kind` and `room_group` from the names of the folders. In SQL of DuckDB:

                    SELECT shot, avg(final_rebound_angle_deg), count(*)
                    FROM read_parquet('trials/*/*/*.parquet', hive_partitioning = true) GROUP BY shot;

                A trial and its session share `session_digest`. An empty cell was not measured. The climate that stands for a trial
                is in `climate_temp_c` and `climate_rh_pct`; `temp_c` and `rh_pct` are only its own spot reading. Times are UTC.
                Angles are in degrees from the rail's normal: 0 is straight out. A diamond is an eighth of the playing length, a
                quarter of the playing width. Units are UCUM codes; they and the descriptions stand also in the key-value metadata
                of every file, as `unit.COLUMN` and `description.COLUMN`.

                %s## Whether it is whole

                `sha256sum --check manifest.sha256`, then each file against `manifest.json`; or `tableweather release verify FOLDER`,
                which does all of it and computes the digests of the sessions again.
                """.formatted(recordedFiles(), cameraFiles(), recordedWords())
                + columns("Trials", TrialTable.RELEASED.columns())
                + columns("Sessions", SessionColumns.TABLE.columns())
                + (has(RecordedTables.READINGS) ? columns("Readings", ReadingTable.TABLE.columns()) : "")
                + (has(RecordedTables.CONTACTS) ? columns("Marked points", ContactTable.TABLE.columns()) : "");
    }

    private boolean has(String folder) {
        return files.stream().anyMatch(file -> file.isIn(folder));
    }

    private String recordedFiles() {
        return (has(RecordedTables.READINGS)
                        ? "| `readings/room_group=*/part-0.parquet` | one row a reading of an instrument that a session here uses,"
                                + " sorted by room, contribution, instrument, time; an instrument of two rooms stands under both |\n"
                        : "")
                + (has(RecordedTables.CONTACTS)
                        ? "| `contacts/room_group=*/part-0.parquet` | one row a marked point of a ball's path, sorted by room,"
                                + " session, trial, place on the path |\n"
                        : "");
    }

    private String cameraFiles() {
        return has("cameras")
                ? "| `cameras/contributions/*.json` | known points of the table on the frames of a contribution's cameras:"
                        + " what brings `x_px`, `y_px` to the table |\n"
                : "";
    }

    private String recordedWords() {
        return (has(RecordedTables.READINGS) ? READINGS : "") + (has(RecordedTables.CONTACTS) ? CONTACTS : "");
    }

    private static <R> String columns(String title, List<TableColumn<R>> columns) {
        StringBuilder page =
                new StringBuilder("\n## " + title + "\n\n| column | type | unit | what |\n| --- | --- | --- | --- |\n");
        for (TableColumn<R> column : columns) {
            page.append("| `")
                    .append(column.name())
                    .append("` | ")
                    .append(column.type().words())
                    .append(" | ")
                    .append(column.unit().isEmpty() ? "" : "`" + column.unit() + "`")
                    .append(" | ")
                    .append(column.description().replace("|", "\\|"))
                    .append(column.required() ? "" : "; may be empty")
                    .append(" |\n");
        }
        return page.toString();
    }
}
