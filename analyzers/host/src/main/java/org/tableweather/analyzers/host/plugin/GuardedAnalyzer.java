package org.tableweather.analyzers.host.plugin;

import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * An analyzer from outside, held to its contract: whatever it throws or returns against it is a {@link PluginFailure}.
 *
 * @param <S> its summary
 */
final class GuardedAnalyzer<S> implements Analyzer<S> {
    private final String name;
    private final Analyzer<S> analyzer;
    private final AnalyzerInfo info;
    private final Class<S> summaryType;

    GuardedAnalyzer(String jarName, Analyzer<S> analyzer, AnalyzerInfo info) {
        this.name = "the analyzer " + info.id() + " " + info.version() + " of " + jarName;
        this.analyzer = analyzer;
        this.info = info;
        this.summaryType = analyzer.summaryType();
    }

    @Override
    public AnalyzerInfo info() {
        return info;
    }

    @Override
    public Class<S> summaryType() {
        return summaryType;
    }

    @Override
    public S summarise(SessionRecord session, Iterable<Trial> trials) {
        return guarded("summarise", () -> analyzer.summarise(session, trials));
    }

    /** As the analyzer concludes; its complaint about a parameter's value comes through as it is. */
    @Override
    public Analysis conclude(SummarySource<S> summaries, Parameters parameters) {
        return conclude(summaries, parameters, ConclusionListener.NONE);
    }

    /** The same; that it is no longer wanted comes through as it is, too. */
    @Override
    public Analysis conclude(SummarySource<S> summaries, Parameters parameters, ConclusionListener listener) {
        Analysis analysis;
        try {
            analysis = analyzer.conclude(summaries, parameters, listener);
        } catch (IllegalArgumentException | CancellationException passedOn) {
            throw passedOn;
        } catch (Throwable thrown) {
            throw failure("conclude", thrown);
        }
        return SoundAnalysis.of(name, analysis);
    }

    private <T> T guarded(String doing, Supplier<T> call) {
        T value;
        try {
            value = call.get();
        } catch (Throwable thrown) {
            throw failure(doing, thrown);
        }
        if (value == null) {
            throw new PluginFailure(name + " returned null from " + doing);
        }
        return value;
    }

    private PluginFailure failure(String doing, Throwable thrown) {
        return new PluginFailure(name + " threw in " + doing + ": " + PluginFailure.inWords(thrown), thrown);
    }
}
