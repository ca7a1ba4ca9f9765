package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Kind;

/**
 * What one kind of trial measures.
 *
 * @param kind whose trials
 * @param outcomes that may be explained, the one that is preferred first
 * @param beside those that are told beside the chosen one, where they are known
 * @param covariates that may be asked for
 */
record KindDefinition(Kind kind, List<Outcome> outcomes, List<Outcome> beside, List<KindCovariate> covariates) {

    /** Bits of an int, less the sign. */
    private static final int MOST_COLUMNS = 31;

    KindDefinition {
        outcomes = List.copyOf(outcomes);
        beside = List.copyOf(beside);
        covariates = List.copyOf(covariates);
        if (KindCovariate.CLIMATE.size() + covariates.size() + outcomes.size() > MOST_COLUMNS) {
            throw new IllegalArgumentException("more than " + MOST_COLUMNS + " columns: leave some out");
        }
    }

    /** What each column of a summary holds: climate, covariates, outcomes. */
    List<Reading> columns() {
        List<Reading> columns = new ArrayList<>();
        KindCovariate.CLIMATE.forEach(covariate -> columns.add(covariate.reading()));
        covariates.forEach(covariate -> columns.add(covariate.reading()));
        outcomes.forEach(outcome -> columns.add(outcome.reading()));
        return columns;
    }

    /** Where a covariate stands among the columns. */
    int column(KindCovariate covariate) {
        int climate = KindCovariate.CLIMATE.indexOf(covariate);
        return climate >= 0 ? climate : KindCovariate.CLIMATE.size() + covariates.indexOf(covariate);
    }

    /** Where an outcome stands among the columns. */
    int column(Outcome outcome) {
        return KindCovariate.CLIMATE.size() + covariates.size() + outcomes.indexOf(outcome);
    }

    /** The outcome of this parameter value. */
    Optional<Outcome> outcome(String parameter) {
        return outcomes.stream()
                .filter(outcome -> outcome.parameter().equals(parameter))
                .findFirst();
    }

    /** The values of the parameter {@code response}. */
    List<String> outcomeParameters() {
        return outcomes.stream().map(Outcome::parameter).toList();
    }

    /** The values of the parameter {@code covariates}. */
    List<String> covariateParameters() {
        return covariates.stream().map(KindCovariate::parameter).toList();
    }
}
