package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.NestedOutcome;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;

/**
 * How a shot's response changes with humidity over all rooms, by a linear mixed model with sessions nested in rooms:
 *
 * <pre>
 * y = b₀ + b₁ h + b₂ h² + b₃ t [+ covariates] + (u₀ + u₁ h)[room] + w[session] + e,   REML
 * h = (RH − 50 %)/10 %,   t = (T − 21 °C)/5 K
 * </pre>
 *
 * <p>Humidity changes between sessions, not between trials: sessions are the whole plots of a split-plot design, and a
 * regression on trials would be far too sure of itself. The room slope stays in the model even when its variance is
 * estimated as zero.
 *
 * @source Laird1982
 * @source Patterson1971
 * @source Kuznetsova2017
 */
public final class ReboundHumidity implements MomentsAnalyzer {

    private static final List<String> REFERENCES = List.of(
            "Laird1982",
            "Patterson1971",
            "Bates2015",
            "Satterthwaite1946",
            "Giesbrecht1985",
            "Kuznetsova2017",
            "Henderson1975",
            "Chan1983",
            "Welford1962",
            "Kenward1997",
            "Wood2017",
            "Mundlak1978",
            "Neuhaus1998",
            "Bell2002",
            "Pustejovsky2018",
            "Bartlett1937",
            "Belsley1980",
            "Stefanski1995",
            "Carroll2006",
            "JCGM100",
            "Davison1997",
            "Higgins2009",
            "ASHRAE2017",
            "ASHRAERegain");

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "rebound-humidity",
            "1.3.1",
            "4",
            "Rebound and humidity",
            "How does the final rebound angle, the landing offset, or the speed kept change with humidity over all rooms?",
            "Linear mixed model of one shot, REML: y = b₀ + b₁ h + b₂ h² + b₃ t [+ covariates] + (u₀ + u₁ h)[room]"
                    + " + w[session] + e, h = (RH − 50 %)/10 %, t = (T − 21 °C)/5 K, room intercept and slope with a free"
                    + " covariance. Intervals by Student's t on Satterthwaite degrees of freedom. Beside it: the slope within"
                    + " rooms and between them, y = b₀ + b_w (h − h̄[room]) + b_b h̄[room] + …, and the test of their"
                    + " difference; least squares with a cluster-robust (CR2) error by room; the slope with the stated"
                    + " accuracy of the hygrometers taken out by simulation and extrapolation; the slope without each"
                    + " room; session residuals; Bartlett's test of equal trial scatter. On request: a penalised cubic"
                    + " spline in place of b₁ h + b₂ h², another humidity measure, Kenward and Roger's degrees of freedom,"
                    + " a curve for each subgroup with a test of the interaction, a parametric bootstrap.",
            List.of(
                    "Sessions are held climates: humidity differs between sessions more than within them.",
                    "Every attempt is logged, made or missed.",
                    "Rooms are like a sample of the rooms that the answer is meant for.",
                    "Room effects, session effects and trial scatter are near normal, trial scatter alike everywhere."),
            List.of(
                    "no trials, or none of the shot with the response and the climate",
                    "no more sessions than climate columns: they are the whole plots",
                    "humidity does not vary between trials",
                    "one trial in each room",
                    "the columns reproduce the response to rounding",
                    "no session states what the humidity measure or a covariate needs, or lies within its formulas",
                    "Kenward and Roger's method was asked for, and its covariance is none in so small a pool",
                    "the search for the optimum does not settle"),
            List.of(
                    ShotCounts.parameter("usable trials"),
                    Response.asked("what is explained"),
                    HumidityMeasure.parameter(
                            "what is taken for humidity; regain is estimated from cloth and climate, at the bed needs its"
                                    + " temperature"),
                    new ParameterInfo(
                            HumidityQuestion.CURVE,
                            "shape over humidity: a parabola, or a penalised spline over knots at every 10 %RH from 20 to"
                                    + " 80 whose smoothness REML chooses",
                            "1",
                            HumidityQuestion.QUADRATIC,
                            List.of(HumidityQuestion.QUADRATIC, HumidityQuestion.SPLINE)),
                    new ParameterInfo(
                            HumidityQuestion.DF_METHOD,
                            "degrees of freedom; Kenward and Roger's are far too careful where a variance is estimated as"
                                    + " zero",
                            "1",
                            HumidityQuestion.SATTERTHWAITE,
                            List.of(HumidityQuestion.SATTERTHWAITE, HumidityQuestion.KENWARD_ROGER)),
                    AskedRange.beginning(),
                    AskedRange.end(),
                    new ParameterInfo(
                            HumidityQuestion.COVARIATES,
                            "more columns of the model, separated by commas, of: "
                                    + String.join(", ", Covariate.parameters()),
                            "1",
                            "",
                            List.of()),
                    new ParameterInfo(
                            HumidityQuestion.SUBGROUP,
                            "parts the sessions into groups with a curve of their own, and tests whether they differ",
                            "1",
                            HumidityQuestion.NO_SUBGROUP,
                            Stream.concat(Stream.of(HumidityQuestion.NO_SUBGROUP), Subgrouping.parameters().stream())
                                    .toList()),
                    new ParameterInfo(
                            HumidityQuestion.BOOTSTRAP,
                            "replicates of a parametric bootstrap of the slope and the change, 0 for none",
                            "1",
                            "0",
                            List.of()),
                    new ParameterInfo(HumidityQuestion.SEED, "of all that is drawn", "1", "1", List.of())),
            List.of(
                    "session",
                    "shot",
                    "temp_c",
                    "rh_pct",
                    "rebound_angle_deg",
                    "final_rebound_angle_deg",
                    "landing_offset_dia",
                    "approach_angle_deg",
                    "approach_speed_mps",
                    "rebound_speed_mps",
                    "side_spin_rps",
                    "roll_ratio"),
            REFERENCES);

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Analysis conclude(SummarySource<SessionMoments> summaries, Parameters parameters) {
        return conclude(summaries, parameters, ConclusionListener.NONE);
    }

    @Override
    public Analysis conclude(
            SummarySource<SessionMoments> summaries, Parameters parameters, ConclusionListener listener) {
        HumidityQuestion question = HumidityQuestion.of(parameters);
        HumidityPool pool = new HumidityPool(summaries.sessions(), question);
        HumidityRefusal refusal = new HumidityRefusal(pool, question, parameters, REFERENCES);
        if (pool.usedTrials == 0) {
            return refusal.withoutUsableTrials();
        }
        NestedModel model = HumidityModels.of(question.columns(), 0);
        NestedOutcome outcome = model.fit(pool.rooms);
        if (outcome instanceof NestedRefusal refused) {
            return refusal.of(refused);
        }
        NestedFit fit = (NestedFit) outcome;
        Optional<Analysis.Declined> unsound = refusal.ofUnsound(fit);
        if (unsound.isPresent()) {
            return unsound.get();
        }
        Optional<NestedFit> judged = question.kenwardRoger() ? fit.withKenwardRoger() : Optional.of(fit);
        if (judged.isEmpty()) {
            return refusal.withoutKenwardRoger();
        }
        HumidityCurve curve = new HumidityCurve(pool, question, judged.get());
        return new HumidityAnswer(new HumidityFit(pool, question, model, judged.get(), curve, listener))
                .write(REFERENCES);
    }
}
