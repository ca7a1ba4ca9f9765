package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;

/**
 * What a plugin process replies: one of these, the others null.
 *
 * @param analyzers what is in the jar
 * @param summary of the session
 * @param estimated the conclusion
 * @param declined the conclusion
 * @param wrongParameter the analyzer's complaint about a parameter's value
 * @param failure what the analyzer did against its contract
 * @param refused why the jar cannot be used
 * @param remedy what to do about that
 * @param working how far a conclusion is; the reply itself is still to come
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Reply(
        List<AnalyzerInfo> analyzers,
        JsonNode summary,
        Analysis.Estimated estimated,
        Analysis.Declined declined,
        String wrongParameter,
        String failure,
        String refused,
        String remedy,
        Working working) {

    /**
     * How far a conclusion is.
     *
     * @param what is being done
     * @param done parts of it
     * @param total parts in all
     */
    record Working(String what, int done, int total) {
        void tell(ConclusionListener listener) {
            listener.at(PluginFailure.shortened(String.valueOf(what)), done, total);
        }
    }

    static Reply working(String what, int done, int total) {
        return new Reply(null, null, null, null, null, null, null, null, new Working(what, done, total));
    }

    /** A word of progress; empty when this is the reply itself. */
    Optional<Working> word() {
        return Optional.ofNullable(working);
    }

    static Reply described(List<AnalyzerInfo> analyzers) {
        return new Reply(analyzers, null, null, null, null, null, null, null, null);
    }

    static Reply summarised(JsonNode summary) {
        return new Reply(null, summary, null, null, null, null, null, null, null);
    }

    static Reply concluded(Analysis analysis) {
        return analysis.fold(
                answer -> new Reply(null, null, answer, null, null, null, null, null, null),
                none -> new Reply(null, null, null, none, null, null, null, null, null));
    }

    static Reply wrongParameter(String complaint) {
        return new Reply(null, null, null, null, complaint, null, null, null, null);
    }

    static Reply failed(String failure) {
        return new Reply(null, null, null, null, null, failure, null, null, null);
    }

    static Reply refused(PluginRefused refused) {
        return new Reply(null, null, null, null, null, null, refused.getMessage(), refused.remedy(), null);
    }

    /** The conclusion, null when there is none. */
    Analysis analysis() {
        return estimated == null ? declined : estimated;
    }
}
