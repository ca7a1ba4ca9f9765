package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * How the chance to make a shot changes with humidity over all rooms:
 *
 * <pre>
 * log(p/(1 − p)) = b₀ + b₁ h [+ b₂ h²] [+ b₃ t] + u[room],   u ~ N(0, σ²)
 * h = (RH − 50 %)/10 %,   t = (T − 21 °C)/5 K
 * </pre>
 *
 * @source Breslow1993
 * @source Pinheiro1995
 * @source Bates2015
 */
public final class MakeRate implements Analyzer<RateSummary> {

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "make-rate",
            "1.0.1",
            "1",
            "Make rate and humidity",
            "Does the climate change how often a shot goes in?",
            "Attempts made and tried are counted per session, shot and climate (in steps of 0.1 %RH and 0.1 °C), and pooled"
                    + " by a logistic mixed model: log(p/(1 − p)) = b₀ + b₁ h [+ b₂ h²] [+ b₃ t] + u[room], u ~ N(0, σ²),"
                    + " h = (RH − 50 %)/10 %, t = (T − 21 °C)/5 K. The likelihood has u integrated out by Laplace's"
                    + " approximation, or by adaptive Gauss-Hermite quadrature of more points (parameter"
                    + " quadrature_points). Intervals are normal on the log odds; that of the change of the chance is by"
                    + " its gradient. e^b₁ is the factor on the odds per 10 %RH.",
            List.of(
                    "Every attempt is logged, made or missed.",
                    "An attempt's chance depends on room and climate only, not on the attempt before it.",
                    "Rooms are like a sample of the rooms that the answer is meant for, their log odds near normal; they"
                            + " differ in level, not in slope.",
                    "Sessions of a room differ by climate and luck only: this is tested, and a warning says when it fails.",
                    "The chance is that of an average room; the average of the chances of all rooms lies nearer to 50 %."),
            List.of(
                    "no attempts of the shot that state made or missed and have a climate",
                    "all attempts went in, or none did",
                    "one room, or no more sessions than coefficients",
                    "humidity does not vary between attempts, or parts the made from the missed",
                    "the search for the largest likelihood does not settle"),
            List.of(
                    ShotCounts.parameter("usable attempts"),
                    new ParameterInfo(
                            RateQuestion.SHAPE,
                            "of the log odds over humidity: a straight line, or a curve with one bend",
                            "1",
                            RateQuestion.LINEAR,
                            List.of(RateQuestion.LINEAR, RateQuestion.QUADRATIC)),
                    new ParameterInfo(
                            RateQuestion.TEMPERATURE,
                            "whether air temperature stands beside humidity in the model",
                            "1",
                            RateQuestion.ADJUSTED,
                            List.of(RateQuestion.ADJUSTED, RateQuestion.IGNORED)),
                    new ParameterInfo(
                            RateQuestion.POINTS,
                            "points of the quadrature, 1 to " + RateQuestion.MOST_POINTS
                                    + "; 1 is Laplace's approximation; more are better where rooms have few attempts",
                            "1",
                            "1",
                            List.of()),
                    AskedRange.beginning(),
                    AskedRange.end()),
            List.of("session", "trial", "shot", "made", "temp_c", "rh_pct"),
            List.of("Breslow1993", "Pinheiro1995", "Bates2015", "McCullagh1989", "Clopper1934"));

    /** Holds no state. */
    public MakeRate() {}

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Class<RateSummary> summaryType() {
        return RateSummary.class;
    }

    @Override
    public RateSummary summarise(SessionRecord session, Iterable<Trial> trials) {
        return RateSummariser.of(session, trials);
    }

    @Override
    public Analysis conclude(SummarySource<RateSummary> summaries, Parameters parameters) {
        RateQuestion question = RateQuestion.of(parameters);
        RatePool pool = new RatePool(summaries.sessions(), question);
        RateRefusal refusal = new RateRefusal(pool, question, parameters, INFO.references());
        Optional<Analysis> declined = refusal.ofPool().map(none -> none);
        return declined.orElseGet(() -> fitted(pool, question)
                .<Analysis>fold(model -> new RateAnswer(model).write(question, INFO.references()), refusal::of));
    }

    /** Without temperature where it cannot be told apart, or takes the last session. */
    private static Answer<RateModel> fitted(RatePool pool, RateQuestion question) {
        if (!question.temperature()) {
            return RateModel.of(pool, question);
        }
        RateQuestion without = question.withoutTemperature();
        if (pool.sessions.size() <= question.coefficients()) {
            return RateModel.of(pool, without);
        }
        Answer<RateModel> answer = RateModel.of(pool, question);
        return answer.fold(
                model -> answer, refusal -> refusal.cause() == Cause.COLLINEAR ? RateModel.of(pool, without) : answer);
    }
}
