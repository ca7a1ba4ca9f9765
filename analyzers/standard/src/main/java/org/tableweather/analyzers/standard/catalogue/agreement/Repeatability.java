package org.tableweather.analyzers.standard.catalogue.agreement;

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
import org.tableweather.analyzers.standard.catalogue.Measure;
import org.tableweather.analyzers.standard.catalogue.MomentsAnalyzer;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomPool;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.interlab.Precision;

/**
 * How well trials, sessions and rooms agree at nearly the same humidity: a room is a laboratory, a trial a result.
 *
 * @source ISO57252
 * @source ASTME691
 */
public final class Repeatability implements MomentsAnalyzer {

    private static final List<String> REFERENCES = List.of(
            "ISO57252",
            "ASTME691",
            "Mandel1985",
            "Cochran1941",
            "Grubbs1950",
            "Grubbs1969",
            "Wilrich2013",
            "Searle1992",
            "Patterson1971");

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "repeatability",
            "1.1.1",
            "1",
            "Agreement of trials, sessions and rooms",
            "How well do trials, sessions and rooms agree when the humidity is nearly the same?",
            "An interlaboratory study of the sessions whose mean humidity lies in one band: a room is a laboratory, its trials"
                    + " are the results. One-way analysis of variance: repeatability s_r = √MSW, two trials of one session;"
                    + " between rooms s_L² = max(0, (MSB − MSW)/n̄); reproducibility s_R = √(s_r² + s_L²), a trial in another"
                    + " room. Limits 2.8 s. Mandel's h (distance of a room's mean) and k (its scatter) with bounds at 0.5 %;"
                    + " Cochran's test of the widest scatter, Grubbs' tests of the outermost mean, then of two, at 5 %"
                    + " (straggler) and 1 % (outlier). As a rule one session of each room counts, the one nearest the middle"
                    + " of the band, so that results are taken within a short time; what differs from session to session is"
                    + " then part of s_L. Where rooms have several sessions in the band, the standard deviations of rooms,"
                    + " sessions and trials are told apart by REML beside it.",
            List.of(
                    "The same shot, set up the same way, in every room.",
                    "Trial scatter is near normal and alike in all rooms; h, k and Cochran's test look at that.",
                    "Within the band humidity changes little: what it changes all the same is part of s_L.",
                    "Bounds are made for the commonest number of trials; with very unlike numbers they are rough.",
                    "Results are not rounded more coarsely than about half of s_r."),
            List.of(
                    "no trials, or none with the response and humidity",
                    "fewer than two rooms with a session in the band, or no room with two trials there",
                    "results never vary within a room"),
            parameters(),
            Response.columnsWith("session", "shot", "rh_pct"),
            REFERENCES);

    private static List<ParameterInfo> parameters() {
        return List.of(
                ShotCounts.parameter("usable trials"),
                Response.asked("what is compared"),
                new ParameterInfo(
                        AgreementQuestion.FROM,
                        "humidity where the band begins; when neither end is set, the 10 %RH that hold the most rooms",
                        "%",
                        "",
                        List.of()),
                new ParameterInfo(
                        AgreementQuestion.TO,
                        "humidity where the band ends; when only one end is set, the band is 10 %RH wide",
                        "%",
                        "",
                        List.of()),
                new ParameterInfo(
                        AgreementQuestion.SESSIONS,
                        "which sessions of a room in the band are its results: one, nearest the middle, or all of them",
                        "1",
                        AgreementQuestion.ONE,
                        List.of(AgreementQuestion.ONE, AgreementQuestion.ALL)));
    }

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Analysis conclude(SummarySource<SessionMoments> summaries, Parameters parameters) {
        AgreementQuestion question = AgreementQuestion.of(parameters);
        RoomPool pool =
                new RoomPool(summaries.sessions(), question.shot(), List.of(Measure.HUMIDITY), question.response());
        Optional<Declined> none = pool.declined(parameters, REFERENCES);
        if (none.isPresent()) {
            return none.get();
        }
        HumidityBand band = HumidityBand.of(question.band(), pool.rooms());
        RoomResults results = new RoomResults(pool, band, question.all());
        return Precision.of(results.laboratories)
                .<Analysis>fold(
                        precision -> new AgreementAnswer(pool, question, band, results, precision).write(REFERENCES),
                        refusal -> refused(pool, band, results, refusal, parameters));
    }

    private static Declined refused(
            RoomPool pool, HumidityBand band, RoomResults results, Refusal refusal, Parameters parameters) {
        String where = "At " + Figures.plain(band.fromPct()) + " to " + Figures.plain(band.toPct()) + " %RH: ";
        boolean still = refusal.cause() == Refusal.Cause.NO_VARIATION;
        String remedy = still
                ? " (" + refusal.detail() + "); log the outcome to a finer step."
                : "; 2 are needed, one of them with 2 trials: repeat the shot there, or set another band.";
        return new Declined(
                still ? Reason.DEGENERATE : Reason.TOO_FEW_RECORDS,
                where + Figures.counted(results.laboratories.size(), "room") + " of "
                        + pool.rooms().size() + " with a session there" + remedy,
                parameters.values(),
                pool.warnings(),
                REFERENCES);
    }
}
