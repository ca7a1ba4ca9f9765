package org.tableweather.schema.check;

import java.util.List;

/** Rules of files, columns, cells, ids and references. */
public final class StructureChecks {
    private static final CheckGroup GROUP = new CheckGroup("structure");

    public static final Check ARCHIVE = GROUP.refuse(
            "archive",
            "The archive is a whole, readable, unencrypted zip file.",
            "a zip file that opens, every entry of which unpacks to its stated size and CRC-32",
            "pack the folder again as a plain .zip, and check that it was copied to the end",
            "PkwareAppnote");

    public static final Check ARCHIVE_PATH = GROUP.refuse(
            "archive-path",
            "Every name in the archive stays inside the archive, and occurs once.",
            "relative names with forward slashes, without '..', each once",
            "pack the folder again with relative names, each file once",
            "PkwareAppnote");

    public static final Check ARCHIVE_SIZE = GROUP.refuse(
            "archive-size",
            "The archive unpacks to a bounded size.",
            "64 files, 8 GiB unpacked, 200 bytes unpacked to 1 packed",
            "split the contribution, and leave out files that do not belong to it",
            "CommonPractice");

    public static final Check LINK_OUTSIDE = GROUP.refuse(
            "link-outside",
            "Every file of the folder lies in the folder.",
            "no link to a place outside",
            "put a copy of the file into the folder in place of the link",
            "CommonPractice");

    public static final Check MISSING_FILE = GROUP.refuse(
            "missing-file",
            "The folder has contribution.json and trials.csv.",
            "both files, by these names, at the top of the folder",
            "add the file, or correct its name",
            "Tableweather10");

    public static final Check UNKNOWN_FILE = GROUP.note(
            "unknown-file",
            "Files that are not part of the format are not read.",
            "contribution.json, trials.csv, climate.csv, contacts.csv, and README.* for people",
            "rename the file if it was meant to be one of these; else nothing",
            "Tableweather10");

    public static final Check EMPTY_FILE = GROUP.refuse(
            "empty-file",
            "No file of the format is empty.",
            "a header and at least one row; for contribution.json an object",
            "fill the file; leave out climate.csv and contacts.csv when there is nothing to say",
            "Tableweather10");

    public static final Check JSON = GROUP.refuse(
            "json",
            "contribution.json is well-formed JSON, each name once in its object.",
            "RFC 8259, UTF-8, at most 32 MiB",
            "correct the place named; an editor that knows JSON marks it",
            "RFC8259");

    public static final Check JSON_TYPE = GROUP.refuse(
            "json-type",
            "Every field of contribution.json has the type of the schema.",
            "the type named",
            "write numbers and true/false without quotes, texts with them, lists in brackets",
            "JsonSchema2020");

    public static final Check JSON_VALUE = GROUP.refuse(
            "json-value",
            "Every field of contribution.json keeps the bounds of the schema.",
            "the bound named",
            "correct the value, or leave the field out when it is not known",
            "JsonSchema2020");

    public static final Check REQUIRED_FIELD = GROUP.refuse(
            "required-field",
            "Required fields of contribution.json are there.",
            "schemaVersion, licence, contributor.name; id and references of rooms, tables and sessions",
            "add the field",
            "Tableweather10");

    public static final Check UNKNOWN_FIELD = GROUP.note(
            "unknown-field",
            "Fields that are not part of the format are not read.",
            "fields of the schema",
            "correct the name if it was meant to be one of the schema; else nothing",
            "Tableweather10");

    public static final Check SCHEMA_VERSION = GROUP.refuse(
            "schema-version",
            "The format's major version is one that this reader knows.",
            "1.0 and later minor versions of 1",
            "write \"schemaVersion\": \"1.0\", or use a reader of the newer format",
            "Tableweather10");

    public static final Check ENCODING = GROUP.refuse(
            "encoding",
            "Texts are UTF-8.",
            "valid UTF-8, with or without byte-order mark",
            "save the file as 'CSV UTF-8'",
            "RFC3629");

    public static final Check CSV = GROUP.refuse(
            "csv",
            "Quotes in CSV files are closed, and doubled inside quotes.",
            "RFC 4180",
            "close the quote; write a quote inside quotes twice",
            "RFC4180");

    public static final Check MIXED_SEPARATORS = GROUP.refuse(
            "mixed-separators",
            "All rows use the separator of the header.",
            "one separator in the whole file",
            "save the file again from one spreadsheet, with one separator",
            "RFC4180");

    public static final Check MIXED_DECIMAL_MARKS = GROUP.refuse(
            "mixed-decimal-marks",
            "All numbers of a file use the same decimal mark.",
            "either points or commas",
            "save the file again with one decimal mark; write no thousands separators",
            "CommonPractice");

    public static final Check ROW_LONG = GROUP.refuse(
            "row-long",
            "No row has filled cells beyond the header.",
            "as many cells as the header has names",
            "put the cell under its column; quote texts that hold the separator",
            "RFC4180");

    public static final Check ROW_SHORT = GROUP.warn(
            "row-short",
            "Every row has a cell for each column; missing ones at the end are taken for empty.",
            "as many cells as the header has names",
            "check that nothing was cut off the row",
            "RFC4180");

    public static final Check CUT_OFF = GROUP.refuse(
            "cut-off",
            "The file's last row is whole.",
            "a last row as wide as the header, or an ended line",
            "copy the file again; it seems to be cut off",
            "CommonPractice");

    public static final Check MISSING_COLUMN = GROUP.refuse(
            "missing-column",
            "The columns that every file needs are there.",
            "trials.csv: session, trial, kind, shot; climate.csv: instrument, time, temp_c or temp_f, rh_pct;"
                    + " contacts.csv: session, trial, seq, point, x_dia and y_dia or x_m and y_m",
            "add the column, with this name",
            "Tableweather10");

    public static final Check OUTCOME_COLUMN = GROUP.refuse(
            "outcome-column",
            "There is a column for an outcome of each kind of trial in the file.",
            "one of the kind's outcomes",
            "add a column for what was observed",
            "Tableweather10");

    public static final Check DUPLICATE_COLUMN = GROUP.refuse(
            "duplicate-column",
            "No column occurs twice.",
            "each name once",
            "take one of the two columns away",
            "Tableweather10");

    public static final Check UNKNOWN_COLUMN = GROUP.note(
            "unknown-column",
            "Columns that are not part of the format are not read.",
            "columns of the format",
            "correct the name if it was meant to be one of the format; else nothing",
            "Tableweather10");

    public static final Check REQUIRED_CELL = GROUP.refuse(
            "required-cell",
            "Cells of required columns are filled.",
            "not empty",
            "fill the cell in every row; spreadsheets' merged cells are empty but for the first",
            "Tableweather10");

    public static final Check NUMBER = GROUP.refuse(
            "number",
            "Numbers are plain numbers.",
            "digits with a decimal point or comma, without unit, thousands separator or text",
            "write the number alone; leave the cell empty when it was not measured",
            "Tableweather10");

    public static final Check TIME = GROUP.refuse(
            "time",
            "Times are written as RFC 3339 says.",
            "2026-01-12T18:05:00+01:00",
            "write year-month-dayThour:minute:second and the offset from UTC",
            "RFC3339");

    public static final Check TIME_ZONE = GROUP.refuse(
            "time-zone",
            "Times say in which zone they are.",
            "an offset such as +01:00, or Z for UTC",
            "add the offset from UTC that the clock had",
            "RFC3339");

    public static final Check CHOICE = GROUP.refuse(
            "choice",
            "Cells with a fixed choice hold one of it.",
            "the choice named",
            "write one of the choice",
            "Tableweather10");

    public static final Check SPREADSHEET_DIALECT = GROUP.note(
            "spreadsheet-dialect",
            "Files that are not comma-separated with decimal points are read all the same.",
            "comma-separated, decimal point",
            "nothing, if the file was understood rightly",
            "CSVW2015");

    public static final Check ID_FORM = GROUP.refuse(
            "id-form",
            "Ids are short texts that can stand in an address.",
            "1 to 100 characters, no slash, no control characters, no blank at either end",
            "use a shorter or plainer id",
            "Tableweather10");

    public static final Check DUPLICATE_ID = GROUP.refuse(
            "duplicate-id",
            "No two rooms, tables, ball sets, cues, instruments, shots or sessions share an id.",
            "each id once in its list",
            "give one of them another id",
            "Tableweather10");

    public static final Check UNKNOWN_REFERENCE = GROUP.refuse(
            "unknown-reference",
            "What an entry refers to exists.",
            "the id of an entry",
            "correct the id, or add the entry",
            "Tableweather10");

    public static final Check UNKNOWN_SESSION = GROUP.refuse(
            "unknown-session",
            "Every row belongs to a session of contribution.json.",
            "an id of sessions",
            "correct the id, or add the session",
            "Tableweather10");

    public static final Check UNKNOWN_SHOT = GROUP.refuse(
            "unknown-shot",
            "Every trial's shot is in the catalogue or in contribution.json.",
            "an id of the catalogue or of shots",
            "correct the id, or add the shot",
            "Tableweather10");

    public static final Check DUPLICATE_TRIAL = GROUP.refuse(
            "duplicate-trial",
            "No two rows of a session share a trial id.",
            "each trial once in its session",
            "number the attempts of a session without repeats",
            "Tableweather10");

    public static final Check SESSION_SIZE = GROUP.refuse(
            "session-size",
            "A session is one visit's work.",
            "at most 250 000 trials",
            "split the session by visit",
            "CommonPractice");

    public static final Check READINGS_SIZE = GROUP.refuse(
            "readings-size",
            "climate.csv is of a bounded length.",
            "at most 4 000 000 readings",
            "thin the log to one reading a minute, or split the contribution",
            "CommonPractice");

    public static final Check CONTACTS_SIZE = GROUP.refuse(
            "contacts-size",
            "contacts.csv is of a bounded length.",
            "at most 1 000 000 marked points",
            "split the contribution",
            "CommonPractice");

    public static final Check SESSION_WITHOUT_TRIALS = GROUP.warn(
            "session-without-trials",
            "Every session has trials.",
            "at least 1 trial",
            "add its rows to trials.csv, or take the session out",
            "Tableweather10");

    private StructureChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
