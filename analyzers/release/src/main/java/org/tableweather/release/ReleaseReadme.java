package org.tableweather.release;

import java.util.List;

/**
 * The page {@code README.md} of a release: what it is and how it is read, for people who have nothing but the folder.
 *
 * @param manifest of the release
 */
record ReleaseReadme(Manifest manifest) {
    String markdown() {
        Citation citation = new Citation(manifest);
        return "# " + citation.title() + "\n\n" + citation.description() + "\n\nReleased on " + manifest.date()
                + ". Cite it as `CITATION.txt` says.\n\n" + """
                ## What lies here

                | file | what |
                | --- | --- |
                | `trials/kind=*/room_group=*/part-0.parquet` | one row an attempt, sorted by shot, room, session, trial |
                | `sessions/room_group=*/part-0.parquet` | one row a session: room, table, cloth, dates, range of the climate, and `record`, all that is known of it as JSON |
                | `manifest.json` | every file with its SHA-256, length and number of rows; `manifest.sha256` is the hash of it |
                | `changes.json` | contributions added, withdrawn and kept since the release before |
                | `shots/catalogue.json`, `shots/contributions/*.json` | what the shot ids of the trials mean: the built-in catalogue at this release, and contributors' own shots, which go before it for the trials of that contribution |
                | `reports/*.json` | what the checks found in each contribution |
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

                ## Whether it is whole

                `sha256sum --check manifest.sha256`, then each file against `manifest.json`; or `tableweather release verify FOLDER`,
                which does all of it and computes the digests of the sessions again.
                """
                + columns("Trials", TrialTable.RELEASED.columns())
                + columns("Sessions", SessionColumns.TABLE.columns());
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
