package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * What a plugin process is asked; members that a kind does not need are null.
 *
 * @param ask which kind
 * @param analyzer id
 * @param session to summarise
 * @param trials of that session
 * @param sessions to conclude over
 * @param hash names these sessions
 * @param parameters values by name
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Question(
        Ask ask,
        String analyzer,
        SessionRecord session,
        List<Trial> trials,
        List<SessionSummary<JsonNode>> sessions,
        String hash,
        Map<String, String> parameters) {

    enum Ask {
        DESCRIBE,
        SUMMARISE,
        CONCLUDE
    }

    static Question describe() {
        return new Question(Ask.DESCRIBE, null, null, null, null, null, null);
    }

    static Question summarise(String analyzer, SessionRecord session, List<Trial> trials) {
        return new Question(Ask.SUMMARISE, analyzer, session, trials, null, null, null);
    }

    static Question conclude(String analyzer, SummarySource<JsonNode> source, Parameters parameters) {
        return new Question(Ask.CONCLUDE, analyzer, null, null, source.sessions(), source.hash(), parameters.values());
    }
}
