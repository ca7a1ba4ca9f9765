package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;

/**
 * Which measure explains a response: relative humidity, absolute humidity, dew point, air temperature, the cloth's estimated regain?
 * Each alone in one model, the same trials for all, compared by information criteria and by how well rooms left out are foretold.
 *
 * @source Akaike1974
 * @source Schwarz1978
 * @source Laird1982
 */
public final class HumidityMeasures implements MomentsAnalyzer {

    private static final List<String> REFERENCES =
            List.of("Akaike1974", "Schwarz1978", "Laird1982", "ASHRAE2017", "ASHRAERegain");
    /** Models closer than this are hardly told apart (common practice, no source). */
    private static final double CLOSE = 2;

    private static final int LEAST_ROOMS = 3;

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "humidity-measure",
            "1.1.1",
            "1",
            "Which measure of humidity",
            "Which measure explains a shot's response: relative humidity, absolute humidity, dew point, air temperature, or the"
                    + " estimated regain of the cloth?",
            "One linear mixed model for each measure x, alone and in a straight line: y = b₀ + b₁ x + (u₀ + u₁ x)[room] + w[session]"
                    + " + e, by full likelihood, on the same trials. AIC = −2 log L + 2 k and BIC = −2 log L + k log n, with k = 7"
                    + " parameters (4 without a measure) and n the number of sessions, since climates are set session by session;"
                    + " the smaller the better. Beside them the error with which each room is foretold from all others, root mean"
                    + " square over its trials.",
            List.of(
                    "The response follows a straight line in the measure over the range of the sessions.",
                    "Sessions held different temperatures as well as humidities: else the measures say the same, and nothing tells"
                            + " them apart.",
                    "Absolute humidity, dew point and regain are computed from the room's air, to second order about a session's"
                            + " means; regain is that of a cloth in equilibrium."),
            List.of(
                    "no trials, or none with the response and the climate",
                    "fewer than three rooms",
                    "fewer than two measures have a model that settles"),
            List.of(ShotCounts.parameter("usable trials"), Response.asked("what is explained")),
            Response.columnsWith("session", "shot", "temp_c", "rh_pct"),
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
        Response response =
                Response.of(parameters.text(HumidityQuestion.RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter));
        HumidityQuestion first = question(parameters.text(HumidityQuestion.SHOT), response, HumidityMeasure.RELATIVE);
        HumidityPool all = new HumidityPool(summaries.sessions(), first);
        if (all.usedTrials == 0) {
            return new HumidityRefusal(all, first, parameters, REFERENCES).withoutUsableTrials();
        }
        Map<HumidityMeasure, HumidityPool> pools = pools(summaries.sessions(), all.shot, response);
        HumidityPool same = pools.get(HumidityMeasure.RELATIVE);
        List<String> warnings = new ArrayList<>(HumidityWarnings.ofPool(all, first));
        if (same.usedSessions < all.usedSessions) {
            warnings.add(Figures.counted(all.usedSessions - same.usedSessions, "session")
                    + " left out: not every measure is known there. Remedy: state what the cloth is made of, and hold climates"
                    + " within the range of the formulas.");
        }
        if (same.rooms.size() < LEAST_ROOMS) {
            return new Declined(
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(same.rooms.size(), "room") + " with every measure known, fewer than " + LEAST_ROOMS
                            + ": add rooms, or state what their cloths are made of.",
                    parameters.values(),
                    warnings,
                    REFERENCES);
        }
        List<MeasureRival> rivals = new ArrayList<>();
        for (MeasureCandidate candidate : MeasureCandidate.values()) {
            MeasureRival.of(candidate, pools.get(candidate.columns()).rooms, listener)
                    .ifPresent(rivals::add);
        }
        rivals.sort(Comparator.comparingDouble(MeasureRival::aic));
        long measures = rivals.stream()
                .filter(rival -> rival.candidate() != MeasureCandidate.NOTHING)
                .count();
        if (measures < 2) {
            return new Declined(
                    Reason.DEGENERATE,
                    "Fewer than two measures have a model that settles: add sessions at other humidities and temperatures.",
                    parameters.values(),
                    warnings,
                    REFERENCES);
        }
        return new Answer(same, response, rivals, warnings).write();
    }

    private static HumidityQuestion question(Optional<String> shot, Response response, HumidityMeasure measure) {
        return new HumidityQuestion(
                shot,
                response,
                new HumidityColumns(measure, false, List.of()),
                false,
                new AskedRange(Optional.empty(), Optional.empty()),
                Optional.empty(),
                0,
                1);
    }

    /** A pool for each measure, all of the sessions in which every measure that any session knows is known. */
    private static Map<HumidityMeasure, HumidityPool> pools(
            List<SessionSummary<SessionMoments>> sessions, String shot, Response response) {
        List<SessionSummary<SessionMoments>> kept = sessions;
        for (MeasureCandidate candidate : MeasureCandidate.values()) {
            HumidityPool pool = new HumidityPool(kept, question(Optional.of(shot), response, candidate.columns()));
            if (pool.usedSessions > 0) {
                Set<List<String>> known = new HashSet<>();
                pool.guarded.forEach(session -> known.add(List.of(session.room(), session.session())));
                kept = kept.stream()
                        .filter(session -> known.contains(List.of(session.roomKey(), session.sessionKey())))
                        .toList();
            }
        }
        Map<HumidityMeasure, HumidityPool> pools = new LinkedHashMap<>();
        for (MeasureCandidate candidate : MeasureCandidate.values()) {
            pools.put(
                    candidate.columns(),
                    new HumidityPool(kept, question(Optional.of(shot), response, candidate.columns())));
        }
        return pools;
    }

    /** Writes the comparison. */
    private record Answer(HumidityPool pool, Response response, List<MeasureRival> rivals, List<String> warnings) {

        Analysis.Estimated write() {
            List<GuardFinding> found = BiasGuards.of(pool.guarded, pool.shot, response.parameter);
            Map<String, String> used = new LinkedHashMap<>();
            used.put(HumidityQuestion.SHOT, pool.shot);
            used.put(HumidityQuestion.RESPONSE, response.parameter);
            Map<String, Object> facts = new LinkedHashMap<>();
            facts.put("method", "ML");
            facts.put("trials", pool.usedTrials);
            facts.put("sessions", pool.usedSessions);
            facts.put("rooms", pool.rooms.size());
            facts.put("bicCounts", "sessions");
            facts.put("guards", found.stream().map(GuardFinding::facts).toList());
            return new Analysis.Estimated(
                    sentence(),
                    used,
                    facts,
                    estimates(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(plot()),
                    warned(found),
                    BiasGuards.withSources(REFERENCES, found));
        }

        private MeasureRival best() {
            return rivals.get(0);
        }

        private String sentence() {
            MeasureRival next = rivals.get(1);
            double ahead = next.aic() - best().aic();
            String lead = capital(best().candidate().noun) + " explains the " + response.noun + " best of "
                    + rivals.size() + " models: its AIC is " + Figures.fixed(ahead, 1) + " below that of "
                    + next.candidate().noun;
            String judged = ahead < CLOSE ? ", which is too close to tell them apart." : ".";
            return lead + judged + " " + foretold();
        }

        private String foretold() {
            Optional<MeasureRival> nearest = rivals.stream()
                    .filter(rival -> Double.isFinite(rival.predictionError()))
                    .min(Comparator.comparingDouble(MeasureRival::predictionError));
            return nearest.map(rival -> "Rooms left out are foretold best by " + rival.candidate().noun
                            + ", with an error of " + Figures.fixed(rival.predictionError(), response.decimals + 1)
                            + response.sign + " a trial.")
                    .orElse("No room can be left out and foretold.");
        }

        private List<Estimate> estimates() {
            List<Estimate> estimates = new ArrayList<>();
            for (MeasureRival rival : rivals) {
                String name = rival.candidate().name;
                String noun = rival.candidate().noun;
                estimates.add(figure(name + ".aic", rival.aic(), "1", "AIC of the model with " + noun));
                estimates.add(figure(
                        name + ".bic",
                        rival.bic(),
                        "1",
                        "BIC of the model with " + noun + ", n the number of sessions"));
                if (Double.isFinite(rival.predictionError())) {
                    estimates.add(figure(
                            name + ".prediction-error",
                            rival.predictionError(),
                            response.unit,
                            "error of a room foretold from the others by " + noun + ", root mean square over trials"));
                }
                if (rival.candidate() != MeasureCandidate.NOTHING) {
                    estimates.add(FitFigures.estimate(
                            name + ".slope",
                            rival.fit().contrast(new double[] {0, 1}),
                            response.per(rival.candidate().per),
                            "change of the mean " + response.noun + " with " + noun + ", by full likelihood"));
                }
            }
            return estimates;
        }

        private static Estimate figure(String name, double value, String unit, String meaning) {
            return new Estimate(name, value, null, null, null, null, unit, meaning);
        }

        private List<String> warned(List<GuardFinding> found) {
            List<String> all = new ArrayList<>(warnings);
            List<String> close = rivals.stream()
                    .filter(rival -> rival != best() && rival.aic() - best().aic() < CLOSE)
                    .map(rival -> rival.candidate().noun)
                    .toList();
            if (!close.isEmpty()) {
                all.add(
                        "Within 2 of the best AIC: " + String.join(", ", close)
                                + ". Remedy: hold the same relative humidity at different temperatures; that is what tells them apart.");
            }
            List<String> missing = new ArrayList<>();
            for (MeasureCandidate candidate : MeasureCandidate.values()) {
                if (rivals.stream().noneMatch(rival -> rival.candidate() == candidate)) {
                    missing.add(candidate.noun);
                }
            }
            if (!missing.isEmpty()) {
                all.add("No model with " + String.join(", ", missing)
                        + ": it does not vary, is not known, or its search did not settle.");
            }
            found.forEach(finding -> all.add(finding.words()));
            return all;
        }

        private Plot plot() {
            List<Series> series = new ArrayList<>();
            for (int i = 0; i < rivals.size(); i++) {
                MeasureRival rival = rivals.get(i);
                series.add(new Series(
                        rival.candidate().noun,
                        Mark.POINTS,
                        List.of((double) (i + 1)),
                        List.of(rival.aic() - best().aic()),
                        List.of(),
                        List.of()));
            }
            return new Plot(
                    "measures",
                    "How far each model's AIC lies above the best",
                    "model, best first",
                    "AIC above the best",
                    series);
        }

        private static String capital(String text) {
            return Character.toUpperCase(text.charAt(0)) + text.substring(1);
        }
    }
}
