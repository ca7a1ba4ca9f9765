package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.guard.BiasGuards;
import org.tableweather.analyzers.standard.catalogue.guard.GuardFinding;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomPool;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.interlab.CochranTest;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency;
import org.tableweather.analyzers.standard.statistics.interlab.GrubbsTest;
import org.tableweather.analyzers.standard.statistics.interlab.Precision;

/** Writes a study of agreement as an answer. */
final class AgreementAnswer {

    private final RoomPool pool;
    private final AgreementQuestion question;
    private final HumidityBand band;
    private final RoomResults results;
    private final Precision precision;
    private final Response response;
    private final Optional<Consistency> consistency;
    private final Optional<CochranTest> cochran;
    private final Optional<GrubbsTest> grubbs;
    private final Optional<NestedFit> nested;

    AgreementAnswer(
            RoomPool pool, AgreementQuestion question, HumidityBand band, RoomResults results, Precision precision) {
        this.pool = pool;
        this.question = question;
        this.band = band;
        this.results = results;
        this.precision = precision;
        response = question.response();
        consistency = given(Consistency.of(results.laboratories));
        cochran = given(CochranTest.of(results.laboratories));
        grubbs = given(GrubbsTest.of(results.laboratories));
        nested = results.sessionsRepeat() ? nested() : Optional.empty();
    }

    private static <T> Optional<T> given(Answer<T> answer) {
        return answer.fold(Optional::of, refusal -> Optional.empty());
    }

    private Optional<NestedFit> nested() {
        return NestedModel.withDefaults().fit(results.sessions) instanceof NestedFit fit
                        && fit.converged()
                        && fit.sessionVariance().isPresent()
                        && !fit.cautions().contains(Caution.MEANS_ONLY)
                ? Optional.of(fit)
                : Optional.empty();
    }

    Analysis.Estimated write(List<String> references) {
        List<Plot> plots =
                consistency.map(bounds -> new AgreementPlots(bounds).all()).orElse(List.of());
        List<GuardFinding> found = pool.guards(results.guarded);
        List<String> warnings = new ArrayList<>(
                new AgreementWarnings(pool, band, results, precision, consistency, cochran, grubbs).list());
        found.forEach(finding -> warnings.add(finding.words()));
        return new Analysis.Estimated(
                sentence(),
                parameters(),
                facts(found),
                estimates(),
                variance(),
                List.of(),
                List.of(),
                plots,
                warnings,
                BiasGuards.withSources(references, found));
    }

    private String sentence() {
        return "At " + Figures.plain(band.fromPct()) + " to " + Figures.plain(band.toPct())
                + " % relative humidity, in "
                + results.laboratories.size() + " rooms: two trials of one room's "
                + (question.all() ? "sessions" : "session") + " differ by less than "
                + figure(precision.repeatabilityLimit()) + " in the " + response.noun
                + " 95 times in 100, two trials of different rooms by less than "
                + figure(precision.reproducibilityLimit()) + " (standard deviations "
                + figure(precision.repeatabilitySd())
                + " and " + figure(precision.reproducibilitySd()) + "). " + verdict();
    }

    private String verdict() {
        if (precision.anova().pValue() >= 0.05) {
            return "Rooms differ by no more than trials of one room do, as far as these data can tell.";
        }
        return precision.betweenSd() > precision.repeatabilitySd()
                ? "Rooms differ more than trials of one room do: more trials in a room do not help, more rooms do."
                : "Rooms differ, but less than single trials of one room do.";
    }

    private String figure(double value) {
        return Figures.fixed(value, response.decimals) + response.sign;
    }

    private Map<String, String> parameters() {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(AgreementQuestion.SHOT, pool.shot());
        used.put(AgreementQuestion.RESPONSE, response.parameter);
        used.put(AgreementQuestion.FROM, Figures.plain(band.fromPct()));
        used.put(AgreementQuestion.TO, Figures.plain(band.toPct()));
        used.put(AgreementQuestion.SESSIONS, question.all() ? AgreementQuestion.ALL : AgreementQuestion.ONE);
        return used;
    }

    private Map<String, Object> facts(List<GuardFinding> found) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("rooms", results.laboratories.size());
        facts.put("sessions", results.guarded.size());
        facts.put("trials", precision.anova().results());
        facts.put("replicates", precision.anova().replicates());
        facts.put("f", precision.anova().f());
        facts.put("fPValue", precision.anova().pValue());
        cochran.ifPresent(test -> facts.put("cochran", AgreementFacts.of(test)));
        grubbs.ifPresent(test -> facts.put("grubbs", AgreementFacts.of(test)));
        consistency.ifPresent(bounds -> facts.put("consistency", AgreementFacts.of(bounds)));
        facts.put("guards", found.stream().map(GuardFinding::facts).toList());
        return facts;
    }

    private List<Estimate> estimates() {
        List<Estimate> estimates = new ArrayList<>();
        Interval interval = precision.repeatabilityInterval(Coverage.DEFAULT);
        estimates.add(new Estimate(
                "repeatability.sd",
                precision.repeatabilitySd(),
                null,
                (double) precision.anova().withinDf(),
                interval.lower(),
                interval.upper(),
                response.unit,
                "s_r, standard deviation of trials in one room's " + (question.all() ? "sessions" : "session")));
        estimates.add(
                bare("between-rooms.sd", precision.betweenSd(), "s_L, standard deviation of the rooms' true means"));
        estimates.add(bare("reproducibility.sd", precision.reproducibilitySd(), "s_R, of a trial in another room"));
        estimates.add(bare(
                "repeatability.limit",
                precision.repeatabilityLimit(),
                "2.8 s_r: two trials of one room differ by less 95 times in 100"));
        estimates.add(bare(
                "reproducibility.limit",
                precision.reproducibilityLimit(),
                "2.8 s_R: two trials of different rooms differ by less 95 times in 100"));
        estimates.add(bare("mean", precision.anova().mean(), "mean " + response.noun + " over all trials compared"));
        nested.ifPresent(fit -> estimates.add(bare(
                "session.sd",
                Math.sqrt(fit.sessionVariance().orElse(0)),
                "standard deviation of sessions of one room in the band, trial scatter taken out")));
        return estimates;
    }

    private Estimate bare(String name, double value, String meaning) {
        return new Estimate(name, value, null, null, null, null, response.unit, meaning);
    }

    private List<VarianceComponent> variance() {
        List<VarianceComponent> components = new ArrayList<>();
        if (nested.isPresent()) {
            NestedFit fit = nested.get();
            components.add(component("room.intercept", fit.roomCovariance()[0][0]));
            components.add(component("session.intercept", fit.sessionVariance().orElse(0)));
            components.add(component("residual", fit.sigma2()));
        } else {
            components.add(component("room.intercept", precision.betweenSd() * precision.betweenSd()));
            components.add(component("residual", precision.anova().withinMeanSquare()));
        }
        return components;
    }

    private static VarianceComponent component(String name, double variance) {
        return new VarianceComponent(
                name,
                OptionalDouble.of(Math.sqrt(variance)),
                OptionalDouble.empty(),
                variance == 0 ? Optional.of("on the boundary") : Optional.empty());
    }
}
