-- Who started an attempt may cancel it; a run that was asked for with a token is not pushed out by those asked for without.

ALTER TABLE run_attempt ADD COLUMN account_id bigint REFERENCES account;
COMMENT ON COLUMN run_attempt.account_id IS 'whose token started it; null without a token';

ALTER TABLE analysis_run ADD COLUMN account_id bigint REFERENCES account;
COMMENT ON COLUMN analysis_run.account_id IS 'whose token asked for it first; null while none did';

ALTER TABLE run_attempt DROP CONSTRAINT run_attempt_run_id_fkey;
ALTER TABLE run_attempt ADD FOREIGN KEY (run_id) REFERENCES analysis_run ON DELETE CASCADE;

CREATE INDEX analysis_run_requested ON analysis_run (requested_at, id);
CREATE INDEX analysis_run_set ON analysis_run (set_hash);
