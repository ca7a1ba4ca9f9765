package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;

/**
 * What is kept of a session for one kind of trial: per shot, the moments of its trials, apart for each pattern of measured
 * columns, so that outcome and covariates can be chosen later; and how the session was shot.
 *
 * @param parts ordered by shot; a bit for each column in the order of the definition: 1 humidity, 2 its square, 4 temperature, then
 *     covariates, then outcomes
 * @param protocol of the session
 */
public record KindSummary(List<Part> parts, SessionProtocol protocol) {

    public KindSummary {
        parts = List.copyOf(parts);
    }
}
