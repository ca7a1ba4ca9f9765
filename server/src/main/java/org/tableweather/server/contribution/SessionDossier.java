package org.tableweather.server.contribution;

import java.util.List;
import java.util.Optional;
import org.tableweather.schema.folder.SessionTraces;
import org.tableweather.server.catalogue.PublishedSessions;

/**
 * All that is known of one published session.
 *
 * @param whole the session and its trials
 * @param traces paths and log from the kept archive; empty when the archive is not there
 * @param findings of the checks that are about it
 */
record SessionDossier(PublishedSessions.Whole whole, Optional<SessionTraces> traces, List<ReportView.Line> findings) {}
