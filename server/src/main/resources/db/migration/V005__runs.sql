-- Analyses that were asked for by name, with their results. A run's id is the SHA-256 over analyzer, version, parameters
-- and the set of sessions, so the same question over the same sessions is one row.

CREATE TABLE session_set (
    hash    text PRIMARY KEY CHECK (hash ~ '^sha256:[0-9a-f]{64}$'),
    digests text[] NOT NULL
);
COMMENT ON COLUMN session_set.digests IS 'sorted; a run can be made again on them after more sessions came';

CREATE TABLE analysis_run (
    id               text PRIMARY KEY CHECK (id ~ '^[0-9a-f]{64}$'),
    analyzer_id      text        NOT NULL,
    analyzer_version text        NOT NULL,
    parameters       json        NOT NULL,
    set_hash         text        NOT NULL REFERENCES session_set,
    requested_at     timestamptz NOT NULL,
    result           bytea,
    result_sha256    text CHECK (result_sha256 ~ '^[0-9a-f]{64}$'),
    CHECK ((result IS NULL) = (result_sha256 IS NULL))
);
COMMENT ON COLUMN analysis_run.result IS 'the bytes of the first attempt that made any; never replaced';

CREATE TABLE run_attempt (
    run_id        text        NOT NULL REFERENCES analysis_run,
    number        integer     NOT NULL,
    state         text        NOT NULL
        CHECK (state IN ('queued', 'running', 'done', 'failed', 'cancelled', 'interrupted')),
    requested_at  timestamptz NOT NULL,
    started_at    timestamptz,
    ended_at      timestamptz,
    failure       text,
    result_sha256 text,
    PRIMARY KEY (run_id, number)
);
CREATE UNIQUE INDEX run_attempt_active ON run_attempt (run_id) WHERE state IN ('queued', 'running');
