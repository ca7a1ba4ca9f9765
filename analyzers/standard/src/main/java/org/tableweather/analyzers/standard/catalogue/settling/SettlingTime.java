package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.statistics.decay.DecayModel;
import org.tableweather.analyzers.standard.statistics.decay.DecayPoint;
import org.tableweather.analyzers.standard.statistics.decay.DecayStart;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * How long cloth and cushions take to settle: a first-order lag of the outcome after each step of the climate,
 * {@code y = a_s + d_s e^(−t/τ) + e}, t since the session's climate was set, one τ for all steps, levels for each.
 *
 * @source Golub1973
 * @source Bates1988
 */
public final class SettlingTime implements Analyzer<SettlingSummary> {

    private static final String SHOT = "shot";
    private static final String RESPONSE = "response";
    private static final String SHARE = "share_pct";

    private static final List<String> REFERENCES =
            List.of("Golub1973", "Bates1988", "MortonHearle2008", "CommonPractice");

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "settling",
            "1.2.0",
            "2",
            "Settling after a change of climate",
            "How long until cloth and cushions have settled in a new climate?",
            "First-order lag by least squares: y = a_s + d_s e^(−t/τ) + e, t the time of an attempt (started_at) since the"
                    + " climate of its session was set (settledFrom), a_s and d_s the settled value and the change left at"
                    + " time 0 of step s, one τ for all steps. Sessions of one table with the same settledFrom are one step."
                    + " The levels are eliminated, one search over log τ remains. Interval: all τ whose sum of squares is no"
                    + " more than 1 + F/ν times the least, F the 95 % point of F(1, ν). A share f is done after −τ ln(1 − f):"
                    + " 3.0 τ for 95 %.",
            List.of(
                    "The climate changed at settledFrom, within a time short beside τ, and was held from then on.",
                    "One exponential: cloth, cushion and balls together. Wool takes up water in ways that depend on where it"
                            + " started, thin cloth in hours, packed wool in days (from memory): a slow tail is not seen.",
                    "All tables settle at the same rate; τ of a damp and of a dry step are taken as one.",
                    "Trial scatter is near normal and alike; attempts of a step have no common error beside its levels, so a"
                            + " visit that differs as a whole widens nothing here and may pass for settling.",
                    "Every attempt is logged, and the shot is the same throughout."),
            List.of(
                    "no trials, or none with started_at in a session with settledFrom",
                    "no step of the climate followed at 3 times with the response",
                    "no change after the steps that can be told from scatter (F test, 5 %)",
                    "data that set no bound to the time constant on one side; the bound on the other is told",
                    "observations that lie on such curves exactly"),
            List.of(
                    ShotCounts.parameter("timed trials"),
                    new ParameterInfo(
                            RESPONSE,
                            "what settles; when not set, the first of those allowed that some timed trial has",
                            "1",
                            "",
                            SettlingOutcome.parameters()),
                    new ParameterInfo(SHARE, "share of the change that counts as settled", "%", "95", List.of())),
            List.of(
                    "session",
                    "trial",
                    "shot",
                    "started_at",
                    "rebound_angle_deg",
                    "final_rebound_angle_deg",
                    "landing_offset_dia",
                    "approach_speed_mps",
                    "rebound_speed_mps",
                    "run_out_m",
                    "object_angle_deg",
                    "deflection_angle_deg",
                    "hop_height_mm",
                    "spread_nearest_mm"),
            REFERENCES);

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Class<SettlingSummary> summaryType() {
        return SettlingSummary.class;
    }

    @Override
    public SettlingSummary summarise(SessionRecord session, Iterable<Trial> trials) {
        return SettlingSummariser.of(session, trials);
    }

    @Override
    public Analysis conclude(SummarySource<SettlingSummary> summaries, Parameters parameters) {
        double share = share(parameters);
        SettlingPool pool = pool(summaries.sessions(), parameters);
        Map<String, String> used = new LinkedHashMap<>();
        used.put(SHOT, pool.shot);
        used.put(RESPONSE, pool.outcome.parameter);
        used.put(SHARE, Figures.plain(share));
        SettlingRefusal refusal = new SettlingRefusal(pool, used, REFERENCES);
        Optional<Analysis> none = refusal.ofPool().map(declined -> declined);
        return none.orElseGet(() -> fitted(pool, refusal, share, used));
    }

    private static Analysis fitted(
            SettlingPool pool, SettlingRefusal refusal, double share, Map<String, String> parameters) {
        List<List<DecayPoint>> steps =
                pool.steps.stream().map(ClimateStep::points).toList();
        return DecayModel.fit(steps, DecayStart.UNKNOWN)
                .<Analysis>fold(
                        fit -> refusal.of(fit)
                                .<Analysis>map(declined -> declined)
                                .orElseGet(() -> new SettlingAnswer(pool, fit, share).write(parameters, REFERENCES)),
                        refusal::of);
    }

    private static double share(Parameters parameters) {
        double share = parameters.number(SHARE).orElse(95.0);
        if (!(share > 0 && share < 100)) {
            throw new IllegalArgumentException("parameter " + SHARE + " = " + Figures.plain(share)
                    + " is not between 0 and 100 %: set a share below 100, the approach never ends");
        }
        return share;
    }

    private static SettlingPool pool(List<SessionSummary<SettlingSummary>> sessions, Parameters parameters) {
        Optional<String> shot = parameters.text(SHOT);
        Optional<SettlingPool> asked = parameters
                .text(RESPONSE)
                .map(SettlingOutcome::of)
                .map(outcome -> new SettlingPool(sessions, shot, outcome));
        return asked.orElseGet(() -> richest(Arrays.stream(SettlingOutcome.values())
                .map(outcome -> new SettlingPool(sessions, shot, outcome))
                .toList()));
    }

    /** The first with a step that can be used, or else with any step, or else the first. */
    private static SettlingPool richest(List<SettlingPool> pools) {
        return pools.stream()
                .filter(pool -> !pool.steps.isEmpty())
                .findFirst()
                .or(() -> pools.stream().filter(pool -> pool.shortSteps > 0).findFirst())
                .orElse(pools.get(0));
    }
}
