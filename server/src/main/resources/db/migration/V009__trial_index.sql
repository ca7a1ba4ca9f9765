-- The server has the index learn of new rows after each contribution. What the database's own worker is asked for beside that it refuses for
-- want of room, range by range, with a line in its log for each.
ALTER INDEX trial_session SET (autosummarize = off);
