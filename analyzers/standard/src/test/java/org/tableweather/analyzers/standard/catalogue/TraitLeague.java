package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

/** Invented leagues whose sessions state something, or whose trials are moved. */
final class TraitLeague {

    private static final double NONE = Double.NaN;

    private TraitLeague() {}

    /** A session of a cloth, a bed and a hygrometer. */
    static SessionTraits traits(double woolPct, double bedC, double accuracyRhPct, String instrument) {
        return new SessionTraits(
                woolPct, 100 - woolPct, NONE, NONE, NONE, NONE, NONE, bedC, accuracyRhPct, false, instrument, "");
    }

    /** A session of a cloth of this age on a table of this length. */
    static SessionTraits aged(double clothAgeDays, double playingLengthMm) {
        return new SessionTraits(
                NONE, NONE, NONE, clothAgeDays, playingLengthMm, NONE, NONE, NONE, NONE, false, "", "");
    }

    static Analysis analysed(List<Held> league, Function<Held, SessionTraits> traits, Map<String, String> set) {
        ReboundHumidity analyzer = new ReboundHumidity();
        List<SessionSummary<SessionMoments>> summaries = new ArrayList<>();
        for (Held held : league) {
            SessionMoments plain = SessionMomentsBuilder.of(held.trials());
            summaries.add(new SessionSummary<>(
                    held.room(),
                    held.session(),
                    held.session(),
                    true,
                    held.trials().size(),
                    new SessionMoments(plain.parts(), traits.apply(held), plain.protocol())));
        }
        return analyzer.conclude(InventedLeague.source(summaries), Parameters.of(analyzer.info(), set));
    }

    static Analysis.Estimated estimated(
            List<Held> league, Function<Held, SessionTraits> traits, Map<String, String> set) {
        return (Analysis.Estimated) analysed(league, traits, set);
    }

    static Analysis.Estimated estimated(List<Held> league, Map<String, String> set) {
        return estimated(league, held -> SessionTraits.UNKNOWN, set);
    }

    /** The same climates with another angle, a function of the trial. */
    static List<Held> angled(List<Held> league, Function<Trial, Double> angle) {
        return moved(
                league,
                trial -> new TrialDraft(trial.session(), Integer.parseInt(trial.trial()))
                        .climate(trial.climate().tempC(), trial.climate().rhPct())
                        .angle(angle.apply(trial))
                        .build());
    }

    static List<Held> moved(List<Held> league, UnaryOperator<Trial> change) {
        return league.stream()
                .map(held -> new Held(
                        held.room(),
                        held.session(),
                        held.trials().stream().map(change).toList()))
                .toList();
    }

    static Analysis.Estimate estimate(Analysis.Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not in " + answer.estimates()));
    }
}
