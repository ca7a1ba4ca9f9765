package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;

/**
 * What a pooled kind says of itself beside what all of them say.
 *
 * @param id of the analyzer
 * @param version of the method
 * @param title short
 * @param question in plain words
 * @param measure the measure and its sign, in words
 * @param assumptions of the measure
 * @param columns of the trials
 * @param references of the measure
 */
record KindInfo(
        String id,
        String version,
        String title,
        String question,
        String measure,
        List<String> assumptions,
        List<String> columns,
        List<String> references) {

    private static final String SUMMARY_VERSION = "2";

    private static final List<String> MODEL_REFERENCES =
            List.of("Laird1982", "Patterson1971", "Satterthwaite1946", "Kuznetsova2017", "Henderson1975", "Chan1983");

    AnalyzerInfo of(KindDefinition definition) {
        return new AnalyzerInfo(
                id,
                version,
                SUMMARY_VERSION,
                title,
                question,
                measure
                        + " Pooled by a linear mixed model of one shot, REML: y = b₀ + b₁ h [+ b₂ h²] + b₃ t [+ covariates]"
                        + " + (u₀ + u₁ h)[room] + w[session] + e, h = (RH − 50 %)/10 %, t = (T − 21 °C)/5 K, room"
                        + " intercept and slope with a free covariance. Intervals by Student's t on Satterthwaite degrees"
                        + " of freedom.",
                allAssumptions(),
                declines(definition),
                parameters(definition),
                allColumns(),
                allReferences());
    }

    private List<String> allAssumptions() {
        List<String> all = new ArrayList<>(assumptions);
        all.add("Sessions are held climates: humidity differs between sessions more than within them.");
        all.add("Every attempt is logged.");
        all.add("Rooms are like a sample of the rooms that the answer is meant for.");
        all.add("Room effects, session effects and trial scatter are near normal, trial scatter alike everywhere.");
        return all;
    }

    private static List<String> declines(KindDefinition definition) {
        return List.of(
                "no trials of kind " + definition.kind().schemaName()
                        + ", or none of the shot with the response and the climate",
                "no more sessions than coefficients of the climate: they are the whole plots",
                "humidity does not vary between trials",
                "one trial in each room",
                "the columns reproduce the response to rounding",
                "the search for the optimum does not settle");
    }

    private static List<ParameterInfo> parameters(KindDefinition definition) {
        List<ParameterInfo> parameters = new ArrayList<>();
        parameters.add(ShotCounts.parameter("usable trials"));
        parameters.add(new ParameterInfo(
                KindQuestion.RESPONSE,
                "what is explained; when not set, the first of those allowed that some trial has",
                "1",
                "",
                definition.outcomeParameters()));
        parameters.add(new ParameterInfo(
                KindQuestion.SHAPE,
                "of the mean over humidity: a curve with one bend, or a straight line",
                "1",
                KindQuestion.QUADRATIC,
                List.of(KindQuestion.QUADRATIC, KindQuestion.LINEAR)));
        parameters.add(AskedRange.beginning());
        parameters.add(AskedRange.end());
        parameters.add(new ParameterInfo(
                KindQuestion.COVARIATES,
                "more columns of the model, separated by commas, of: "
                        + String.join(", ", definition.covariateParameters()),
                "1",
                "",
                List.of()));
        return parameters;
    }

    private List<String> allColumns() {
        List<String> all = new ArrayList<>(List.of("session", "trial", "kind", "shot", "temp_c", "rh_pct"));
        all.addAll(columns);
        return all;
    }

    private List<String> allReferences() {
        List<String> all = new ArrayList<>(references);
        all.addAll(MODEL_REFERENCES);
        return all;
    }
}
