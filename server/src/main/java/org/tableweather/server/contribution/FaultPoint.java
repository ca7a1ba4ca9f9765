package org.tableweather.server.contribution;

/** Places where a test may have the server end as abruptly as by kill -9. */
enum FaultPoint {
    /** Some bytes of an upload are in a file. */
    UPLOAD_BEGUN,
    /** All bytes are in a file, not synced. */
    UPLOAD_COMPLETE,
    /** The archive is in its place, the database knows nothing of it. */
    ARCHIVE_STORED,
    /** The database knows that it was received. */
    RECEIVED,
    /** Some trials have been sent to the database. */
    COPYING,
    /** All rows are stored, nothing is committed. */
    BEFORE_COMMIT,
    /** All is committed, the client has no answer. */
    BEFORE_ANSWER,
    /** The checks have refused, their report is not stored. */
    BEFORE_REFUSAL
}
