-- What an analyzer kept of a session. An accepted session never changes, so a summary holds as long as the analyzer's
-- summary version does. UTF-8 JSON as bytes: the digits of a double are the very ones that were written.

CREATE TABLE session_summary (
    analyzer_id     text    NOT NULL,
    summary_version text    NOT NULL,
    session_id      integer NOT NULL REFERENCES session,
    summary         bytea   NOT NULL,
    PRIMARY KEY (analyzer_id, summary_version, session_id)
);
