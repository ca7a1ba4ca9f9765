package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.MomentsAnalyzer;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;

/**
 * Do rooms agree? A humidity slope for each room from its session means, then a random-effects meta-analysis of the slopes:
 *
 * <pre>
 * bᵢ ~ N(μ, Var bᵢ + τ²)
 * </pre>
 *
 * @source DerSimonian1986
 * @source Viechtbauer2010
 * @source Hartung2001
 */
public final class RoomSlopes implements MomentsAnalyzer {

    private static final List<String> REFERENCES = List.of(
            "DerSimonian1986",
            "Viechtbauer2005",
            "Paule1982",
            "Viechtbauer2007",
            "Viechtbauer2010",
            "Hartung2001",
            "Cochran1954",
            "Higgins2002",
            "Higgins2009",
            "Egger1997",
            "Sterne2005",
            "Patterson1971");

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "room-slopes",
            "1.1.1",
            "1",
            "Slopes room by room",
            "Do rooms agree on how much humidity changes a shot?",
            "Two stages. First a slope for each room: a line through its session means, each weighted by 1/(v + s²/n), v and s²"
                    + " the variances of sessions and trials that all rooms share, from the pooled model by REML; sessions are"
                    + " held climates, so trials add precision to a session's mean, not more humidities. Rooms have few sessions:"
                    + " a line with its own scatter would rest on one or two degrees of freedom, so its standard error is a"
                    + " lottery (scatter = own asks for it all the same: equal weights, RSS/(S − 2), 4 sessions or more)."
                    + " Temperature and the bend over humidity, as the pooled model has them, are taken off first, so that"
                    + " rooms measured at different humidities or seasons are not called different for that alone. Second a"
                    + " random-effects meta-analysis, bᵢ ~ N(μ, Var bᵢ + τ²): τ² by REML, Paule-Mandel or"
                    + " DerSimonian-Laird with its Q-profile interval, Hartung-Knapp interval of μ, I², a prediction interval"
                    + " on k − 2 degrees of freedom, the mean without each room, regression of slopes on their standard"
                    + " errors.",
            List.of(
                    "Sessions and trials scatter alike in all rooms (scatter = shared), and these variances are taken as known.",
                    "Humidity is held within a session: only its mean is used.",
                    "Rooms are a sample of rooms, their true slopes near normal about one mean.",
                    "Temperature and bend of the pooled model hold in every room; their error is not carried into the slopes.",
                    "One shot, the same in all rooms; rooms contribute whatever they found."),
            List.of(
                    "no trials, or none with the response and the climate",
                    "fewer than two rooms with sessions at humidities 2 %RH apart or more",
                    "the slopes of all rooms are equal to rounding",
                    "the pooled model has no sound fit, where it is needed"),
            parameters(),
            Response.columnsWith("session", "shot", "temp_c", "rh_pct"),
            REFERENCES);

    private static List<ParameterInfo> parameters() {
        return List.of(
                ShotCounts.parameter("usable trials"),
                Response.asked("what is explained"),
                new ParameterInfo(
                        SlopeQuestion.METHOD,
                        "how the variance between rooms is estimated: restricted likelihood, Paule-Mandel,"
                                + " DerSimonian-Laird",
                        "1",
                        SlopeQuestion.REML,
                        List.of(SlopeQuestion.REML, SlopeQuestion.PAULE_MANDEL, SlopeQuestion.DERSIMONIAN_LAIRD)),
                new ParameterInfo(
                        SlopeQuestion.SCATTER,
                        "scatter of sessions: shared by all rooms, or each room's own",
                        "1",
                        SlopeQuestion.SHARED,
                        List.of(SlopeQuestion.SHARED, SlopeQuestion.OWN)),
                new ParameterInfo(
                        SlopeQuestion.ADJUST,
                        "what is taken off before a room's line: temperature and bend of the pooled model, or nothing",
                        "1",
                        SlopeQuestion.POOLED,
                        List.of(SlopeQuestion.POOLED, SlopeQuestion.NONE)));
    }

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Analysis conclude(SummarySource<SessionMoments> summaries, Parameters parameters) {
        SlopeQuestion question = SlopeQuestion.of(parameters);
        RoomPool pool = new RoomPool(summaries.sessions(), question.shot(), question.climate(), question.response());
        Optional<Declined> none = pool.declined(parameters, REFERENCES);
        if (none.isPresent()) {
            return none.get();
        }
        RoomModel model = RoomModel.of(pool);
        if (model.fit().isEmpty() && (question.shared() || question.adjusted())) {
            return model.declined(pool, parameters, REFERENCES);
        }
        SlopeStage stage = new SlopeStage(pool, question, model.fit());
        if (stage.slopes.size() < 2) {
            return tooFew(pool, stage, question, parameters);
        }
        return question.analysis()
                .fit(stage.effects())
                .<Analysis>fold(
                        fit -> new SlopesAnswer(pool, question, model.fit(), stage, fit).write(REFERENCES),
                        refusal -> equal(pool, refusal, parameters));
    }

    private static Declined tooFew(RoomPool pool, SlopeStage stage, SlopeQuestion question, Parameters parameters) {
        int sessions = question.shared() ? 2 : SlopeStage.LEAST_OWN_SESSIONS;
        return new Declined(
                Reason.TOO_FEW_RECORDS,
                Figures.counted(stage.slopes.size(), "room") + " of "
                        + pool.rooms().size()
                        + " with a slope of its own, 2 are needed: hold " + sessions
                        + " sessions or more at humidities at least " + Figures.plain(SlopeStage.LEAST_RANGE_PCT)
                        + " %RH apart, in 2 rooms or more.",
                parameters.values(),
                pool.warnings(),
                REFERENCES);
    }

    private static Declined equal(RoomPool pool, Refusal refusal, Parameters parameters) {
        return new Declined(
                Reason.DEGENERATE,
                "The slopes cannot be pooled (" + refusal.detail()
                        + "): check that the rooms' data are not copies of each other.",
                parameters.values(),
                pool.warnings(),
                REFERENCES);
    }
}
