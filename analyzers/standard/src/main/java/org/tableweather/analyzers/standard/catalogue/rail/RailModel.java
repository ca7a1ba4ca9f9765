package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.List;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * What the climate changes in the rail, restitution or grip: a rigid-body impact fitted to pairs of approach and rebound over all rooms,
 *
 * <pre>
 * (rebound angle, speed off / speed on) = impact(approach, e, μ) + scatter
 * e     = e₀ [+ e₁ (v − 1 m/s)] + e₂ x [+ e₃ t] + room (level, slope) + session
 * log μ = m₀                    + m₂ x [+ m₃ t] + room (level, slope) + session
 * </pre>
 *
 * @source LindstromBates1990
 * @source Mathavan2010
 */
public final class RailModel implements Analyzer<RailSummary> {

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "rail-model",
            "1.0.0",
            "1",
            "What changes in the rail",
            "Does the climate change how far the rail throws the ball back, or how it grips it?",
            "Pairs of approach and rebound, as moments per session, shot and what was measured, are the responses of a rigid-body"
                    + " impact: restitution e by the speed v across the rail and friction μ at the height of the nose give"
                    + " the rebound angle and speed. e = e₀ [+ e₁ (v − 1 m/s)] + e₂ x [+ e₃ t], log μ = m₀ + m₂ x [+ m₃ t],"
                    + " x the measure of humidity in its steps, t = (T − 21 °C)/5 K; each room has its own levels and humidity"
                    + " slopes, each session its own levels, normal and uncorrelated. Gauss-Newton on the nonlinear mixed"
                    + " model: linearised about the present estimates, fitted by restricted likelihood, until nothing moves;"
                    + " derivatives by central differences. The scatter of attempts is that within sessions, with the"
                    + " approach angle's share taken out. fit.parameters and fit.covariance hold what prediction needs;"
                    + " fit.identifiable tells what angles alone, angles and speeds, and whole paths would tell in the same"
                    + " sessions, by the information of the design. impact=stepped fits the impact with friction on the bed"
                    + " and energetic restitution instead of the closed form; its e means something else.",
            List.of(
                    "Rigid ball and nose, true up to about 2.5 m/s across; without a stated nose height, 63.5 % of the ball.",
                    "The ball rolls where roll_ratio is not stated and has no side spin; pairs that state side spin are left"
                            + " out, because its direction along the rail is not told.",
                    "Speeds are those at the rail; mean speeds over the legs make the rail seem deader the slower the cloth.",
                    "Approach angles are read without error; an error in them hides among the scatter.",
                    "Rooms are like a sample of the rooms that the answer is meant for.",
                    "Every attempt is logged."),
            List.of(
                    "no pairs of approach and rebound with a climate",
                    "fewer than two rooms, or no more sessions than coefficients",
                    "humidity that hardly varies",
                    "attempts that do not repeat a condition, or never differ",
                    "data that cannot tell restitution from friction: angles alone at one approach angle",
                    "a search that does not settle"),
            List.of(
                    new ParameterInfo(
                            RailQuestion.SHOT,
                            "id of a shot, to use its pairs alone; when not set, the pairs of all shots",
                            "1",
                            "",
                            List.of()),
                    HumidityMeasure.parameter("what is taken for humidity"),
                    new ParameterInfo(
                            RailQuestion.IMPACT,
                            "which impact is fitted",
                            "1",
                            RailQuestion.CLOSED_FORM,
                            List.of(RailQuestion.CLOSED_FORM, RailQuestion.STEPPED))),
            List.of(
                    "session",
                    "trial",
                    "shot",
                    "approach_angle_deg",
                    "approach_speed_mps",
                    "side_spin_rps",
                    "roll_ratio",
                    "rebound_angle_deg",
                    "rebound_speed_mps",
                    "temp_c",
                    "rh_pct"),
            List.of("LindstromBates1990", "Pinheiro2000", "Mathavan2010", "Stronge1990", "Han2005", "WpaEquipment"));

    /** Holds no state. */
    public RailModel() {}

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Class<RailSummary> summaryType() {
        return RailSummary.class;
    }

    @Override
    public RailSummary summarise(SessionRecord session, Iterable<Trial> trials) {
        return RailSummariser.of(session, trials);
    }

    @Override
    public Analysis conclude(SummarySource<RailSummary> summaries, Parameters parameters) {
        RailPool pool = new RailPool(summaries.sessions(), RailQuestion.of(parameters));
        RailRefusal refusal = new RailRefusal(pool, parameters, INFO.references());
        return PooledRail.<Analysis>fit(
                pool, refusal, rail -> new RailAnswer(rail).write(INFO.references()), declined -> declined);
    }
}
