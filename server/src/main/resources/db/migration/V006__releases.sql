-- Releases: what was accepted at one moment, frozen. The files lie in the data folder; here is which contributions went in.

CREATE TABLE release (
    number          integer PRIMARY KEY CHECK (number >= 1),
    title           text        NOT NULL,
    released_on     date        NOT NULL,
    state           text        NOT NULL CHECK (state IN ('building', 'frozen', 'failed')),
    requested_at    timestamptz NOT NULL,
    frozen_at       timestamptz,
    manifest_sha256 text CHECK (manifest_sha256 ~ '^[0-9a-f]{64}$'),
    failure         text,
    CHECK ((state = 'frozen') = (manifest_sha256 IS NOT NULL))
);
CREATE UNIQUE INDEX release_building ON release ((1)) WHERE state = 'building';

CREATE TABLE release_contribution (
    number          integer NOT NULL REFERENCES release ON DELETE CASCADE,
    contribution_id bigint  NOT NULL REFERENCES contribution,
    PRIMARY KEY (number, contribution_id)
);
COMMENT ON TABLE release_contribution IS 'as accepted when the release was asked for; a later withdrawal changes nothing here';

ALTER TABLE contribution ADD COLUMN withdrawal_reason text;
