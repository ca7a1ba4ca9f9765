-- What filters ask of a session beside its shots, times and climate; saved queries. V008_1__SessionMeasures fills it for
-- sessions that are here already.

ALTER TABLE room ADD COLUMN contributor text COLLATE "C"
    GENERATED ALWAYS AS (regexp_replace(key, '/[^/]*$', '')) STORED;
COMMENT ON COLUMN room.contributor IS 'the key before its last slash: ORCID iD, or else the name';

ALTER TABLE contribution ADD COLUMN worst_finding smallint NOT NULL GENERATED ALWAYS AS (
    CASE
        WHEN report IS NULL THEN 0
        WHEN jsonb_path_exists(report::jsonb, '$.findings[*] ? (@.severity == "refuse")') THEN 3
        WHEN jsonb_path_exists(report::jsonb, '$.findings[*] ? (@.severity == "warn")') THEN 2
        WHEN jsonb_path_exists(report::jsonb, '$.findings[*] ? (@.severity == "note")') THEN 1
        ELSE 0
    END) STORED;
COMMENT ON COLUMN contribution.worst_finding IS '0 none, 1 note, 2 warn, 3 refuse; a report lists at least one finding of each check that has any';

ALTER TABLE session
    ADD COLUMN climate_complete boolean NOT NULL DEFAULT false,
    ADD COLUMN playing_length_mm double precision,
    ADD COLUMN wool_pct          double precision,
    ADD COLUMN cloth_age_days    double precision;
COMMENT ON COLUMN session.climate_complete IS 'whether temperature and humidity of every trial are known';
COMMENT ON COLUMN session.cloth_age_days IS 'from the cloth''s fitting to the session''s date';

-- Between which values a measure of the air's moisture lies in a session. Every measure rises or falls steadily with
-- temperature and with relative humidity, so the corners of the session's span of both hold its extremes. No row: not known
-- for any trial. Infinite: known for some trials only.
CREATE TABLE session_measure (
    session_id integer NOT NULL REFERENCES session,
    measure    text COLLATE "C" NOT NULL,
    low        double precision NOT NULL,
    high       double precision NOT NULL,
    PRIMARY KEY (session_id, measure)
);

CREATE TABLE saved_query (
    name       text COLLATE "C" NOT NULL CHECK (name ~ '^[a-z0-9][a-z0-9-]{0,63}$'),
    version    integer     NOT NULL CHECK (version >= 1),
    account_id bigint      NOT NULL REFERENCES account,
    parameters json        NOT NULL,
    saved_at   timestamptz NOT NULL,
    deleted_at timestamptz,
    PRIMARY KEY (name, version)
);
COMMENT ON TABLE saved_query IS 'a version never changes; a deleted name stays its owner''s';
