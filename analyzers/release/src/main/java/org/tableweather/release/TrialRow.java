package org.tableweather.release;

import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * A trial with the session it belongs to.
 *
 * @param session of it
 * @param sessionJson the session as JSON; empty where the file has another place for it
 * @param sessionTrials trials of the whole session
 * @param ordinal position in the session's canonical order, from 1
 * @param trial the attempt
 */
record TrialRow(SessionRecord session, String sessionJson, int sessionTrials, int ordinal, Trial trial) {}
