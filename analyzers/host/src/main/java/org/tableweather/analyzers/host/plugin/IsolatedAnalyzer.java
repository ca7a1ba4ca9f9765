package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** An analyzer that runs in another process; here its summaries are JSON and nothing more. */
final class IsolatedAnalyzer implements Analyzer<JsonNode> {
    private final IsolatedPlugin plugin;
    private final AnalyzerInfo info;

    IsolatedAnalyzer(IsolatedPlugin plugin, AnalyzerInfo info) {
        this.plugin = plugin;
        this.info = info;
    }

    @Override
    public AnalyzerInfo info() {
        return info;
    }

    @Override
    public Class<JsonNode> summaryType() {
        return JsonNode.class;
    }

    @Override
    public JsonNode summarise(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> listed = new ArrayList<>();
        trials.forEach(listed::add);
        Reply reply = checked(plugin.askKept(Question.summarise(info.id(), session, listed)));
        if (reply.summary() == null) {
            throw new PluginFailure(name() + " replied without a summary");
        }
        return reply.summary();
    }

    @Override
    public Analysis conclude(SummarySource<JsonNode> summaries, Parameters parameters) {
        return conclude(summaries, parameters, ConclusionListener.NONE);
    }

    @Override
    public Analysis conclude(SummarySource<JsonNode> summaries, Parameters parameters, ConclusionListener listener) {
        Reply reply = checked(plugin.askOnce(Question.conclude(info.id(), summaries, parameters), listener));
        if (reply.wrongParameter() != null) {
            throw new IllegalArgumentException(reply.wrongParameter());
        }
        // checked here too: a process that runs foreign code vouches for nothing
        return SoundAnalysis.of(name(), reply.analysis());
    }

    private Reply checked(Reply reply) {
        if (reply.failure() != null || reply.refused() != null) {
            throw new PluginFailure(reply.failure() == null ? reply.refused() : reply.failure());
        }
        return reply;
    }

    private String name() {
        return "the analyzer " + info.id() + " " + info.version() + " of " + plugin.jarName();
    }
}
