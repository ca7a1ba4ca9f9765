package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.catalogue.rail.PooledRail;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * How far a pattern drifts between two climates: the ball's way over rails fitted by {@code rail-model}, with what is not known drawn many
 * times over.
 *
 * @source Mathavan2010
 * @source JCGM101
 */
public final class PathPrediction implements Analyzer<PathSummary> {

    private static final AnalyzerInfo INFO = PathInfo.info();

    /** Holds no state. */
    public PathPrediction() {}

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Class<PathSummary> summaryType() {
        return PathSummary.class;
    }

    @Override
    public PathSummary summarise(SessionRecord session, Iterable<Trial> trials) {
        return PathSummariser.of(session, trials);
    }

    @Override
    public Analysis conclude(SummarySource<PathSummary> summaries, Parameters parameters) {
        PathQuestion question = PathQuestion.of(parameters);
        PathPool pool = new PathPool(summaries.sessions());
        if (question.check()) {
            return PathCheck.of(pool, question, parameters, INFO.references());
        }
        return PooledRail.of(
                pool.pairs(),
                question.measure(),
                question.stepped(),
                rail -> predicted(new PathCase(pool, question, rail), parameters),
                none -> new Declined(
                        none.reason(),
                        "The rail cannot be fitted to this pool, so nothing can be predicted from it. " + none.detail(),
                        parameters.values(),
                        none.warnings(),
                        INFO.references()));
    }

    private static Analysis predicted(PathCase asked, Parameters parameters) {
        Optional<PathCase.Obstacle> obstacle = asked.obstacle();
        if (obstacle.isPresent()) {
            return declined(obstacle.get(), asked, parameters);
        }
        PathModel model = asked.model();
        Optional<PathCase.Obstacle> elsewhere = PathAnswer.obstacle(asked, model);
        if (elsewhere.isPresent()) {
            return declined(elsewhere.get(), asked, parameters);
        }
        PathResult result = new PathResult(asked, model);
        return PathAnswer.lost(result)
                .<Analysis>map(lost -> declined(lost, asked, parameters))
                .orElseGet(() -> new PathAnswer(result).write(INFO.references()));
    }

    private static Analysis declined(PathCase.Obstacle obstacle, PathCase asked, Parameters parameters) {
        return new Declined(
                obstacle.reason(), obstacle.detail(), parameters.values(), asked.rail.warnings(), INFO.references());
    }
}
