package org.tableweather.analyzers.standard.statistics.meta;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class MetaAnalysisTest {

    private static final List<StudyEffect> AGREEING =
            List.of(new StudyEffect("a", 1.00, 1), new StudyEffect("b", 1.01, 1), new StudyEffect("c", 0.99, 1));
    private static final List<StudyEffect> TWO = List.of(new StudyEffect("a", 0.3, 1), new StudyEffect("b", 5, 2));
    private static final List<StudyEffect> THREE =
            List.of(new StudyEffect("a", 0.3, 1), new StudyEffect("b", 5, 2), new StudyEffect("c", 1, 2));

    private static GoldenFile golden(String data) {
        return GoldenFile.read("meta/" + data + ".properties");
    }

    private static List<StudyEffect> effects(GoldenFile golden) {
        double[] y = golden.numbers("yi");
        double[] v = golden.numbers("vi");
        List<StudyEffect> effects = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            effects.add(new StudyEffect("study " + i, y[i], v[i]));
        }
        return effects;
    }

    private static HeterogeneityMethod method(String name) {
        return switch (name) {
            case "FE" -> HeterogeneityMethod.FIXED;
            case "DL" -> HeterogeneityMethod.DERSIMONIAN_LAIRD;
            case "PM" -> HeterogeneityMethod.PAULE_MANDEL;
            default -> HeterogeneityMethod.valueOf(name);
        };
    }

    private static void assertNear(double actual, double expected) {
        GoldenFile.assertNear(actual, expected, 1e-10);
    }

    private static void assertNear(Interval actual, double lower, double upper) {
        assertNear(actual.lower(), lower);
        assertNear(actual.upper(), upper);
    }

    private static MetaFit fit(GoldenFile golden, String method, IntervalMethod intervals) {
        return MetaAnalysis.withDefaults()
                .with(method(method))
                .with(intervals)
                .fit(effects(golden))
                .orThrow();
    }

    @Nested
    class AgainstPublishedSoftware {

        @ParameterizedTest
        @CsvSource({
            "dat-bcg, FE",
            "dat-bcg, DL",
            "dat-bcg, REML",
            "dat-bcg, ML",
            "dat-bcg, PM",
            "dat-normand1999, FE",
            "dat-normand1999, DL",
            "dat-normand1999, REML",
            "dat-normand1999, ML",
            "dat-normand1999, PM"
        })
        void poolsTheMean(String data, String method) {
            GoldenFile golden = golden(data);
            MetaFit fit = fit(golden, method, IntervalMethod.NORMAL);
            assertNear(fit.mean().value(), golden.number(method + ".mean"));
            assertNear(fit.mean().standardError(), golden.number(method + ".se"));
            assertNear(fit.mean().statistic(), golden.number(method + ".zval"));
            assertNear(fit.mean().pValue(), golden.number(method + ".pval"));
            assertNear(fit.mean().interval(), golden.number(method + ".ci_lb"), golden.number(method + ".ci_ub"));
            assertNear(fit.logLikelihood(), golden.number(method + ".logLik"));
            assertNear(fit.heterogeneity().tauSquared(), golden.number(method + ".tau2"));
            assertNear(fit.heterogeneity().iSquaredPct(), golden.number(method + ".I2"));
            assertNear(fit.heterogeneity().hSquared(), golden.number(method + ".H2"));
            assertNear(fit.heterogeneity().q(), golden.number(method + ".QE"));
            assertNear(fit.heterogeneity().qPValue(), golden.number(method + ".QEp"));
        }

        @ParameterizedTest
        @CsvSource({
            "dat-bcg, FE",
            "dat-bcg, DL",
            "dat-bcg, REML",
            "dat-bcg, ML",
            "dat-bcg, PM",
            "dat-normand1999, FE",
            "dat-normand1999, DL",
            "dat-normand1999, REML",
            "dat-normand1999, ML",
            "dat-normand1999, PM"
        })
        void makesHartungKnappIntervals(String data, String method) {
            GoldenFile golden = golden(data);
            PooledEffect mean =
                    fit(golden, method, IntervalMethod.HARTUNG_KNAPP).mean();
            assertNear(mean.standardError(), golden.number(method + ".hk.se"));
            assertNear(mean.statistic(), golden.number(method + ".hk.t"));
            assertNear(mean.pValue(), golden.number(method + ".hk.p"));
            assertNear(mean.interval(), golden.number(method + ".hk.ci_lb"), golden.number(method + ".hk.ci_ub"));
        }

        @ParameterizedTest
        @CsvSource({
            "dat-bcg, DL", "dat-bcg, REML", "dat-bcg, ML", "dat-bcg, PM",
            "dat-normand1999, DL", "dat-normand1999, REML", "dat-normand1999, ML", "dat-normand1999, PM"
        })
        void predictsANewRoom(String data, String method) {
            GoldenFile golden = golden(data);
            double[] expected = golden.numbers(method + ".prediction");
            MetaFit fit = fit(golden, method, IntervalMethod.HARTUNG_KNAPP);
            assertNear(fit.prediction().orElseThrow(), expected[0], expected[1]);
        }

        @ParameterizedTest
        @ValueSource(strings = {"dat-bcg", "dat-normand1999"})
        void profilesQ(String data) {
            GoldenFile golden = golden(data);
            double[] expected = golden.numbers("qprofile");
            Heterogeneity heterogeneity =
                    fit(golden, "REML", IntervalMethod.NORMAL).heterogeneity();
            assertNear(heterogeneity.tauSquaredInterval(), expected[0], expected[1]);
        }

        @ParameterizedTest
        @CsvSource({"dat-bcg, DL", "dat-bcg, REML", "dat-normand1999, DL", "dat-normand1999, REML"})
        void leavesOneOut(String data, String method) {
            GoldenFile golden = golden(data);
            List<MetaAnalysis.Omission> omissions = MetaAnalysis.withDefaults()
                    .with(method(method))
                    .with(IntervalMethod.NORMAL)
                    .leaveOneOut(effects(golden))
                    .orThrow();
            String key = "leave1out." + method + ".";
            double[] estimates = golden.numbers(key + "estimate");
            assertThat(omissions).hasSize(estimates.length);
            for (int i = 0; i < estimates.length; i++) {
                MetaFit without = omissions.get(i).without();
                assertThat(omissions.get(i).label()).isEqualTo("study " + i);
                assertNear(without.mean().value(), estimates[i]);
                assertNear(without.mean().standardError(), golden.numbers(key + "se")[i]);
                assertNear(without.heterogeneity().tauSquared(), golden.numbers(key + "tau2")[i]);
                assertNear(without.heterogeneity().q(), golden.numbers(key + "Q")[i]);
            }
        }

        @ParameterizedTest
        @ValueSource(strings = {"FE", "DL", "REML", "ML", "PM"})
        void regressesOnAModerator(String method) {
            GoldenFile golden = golden("dat-bcg");
            double[] latitudes = golden.numbers("ablat");
            double[][] moderators = new double[latitudes.length][];
            for (int i = 0; i < latitudes.length; i++) {
                moderators[i] = new double[] {latitudes[i]};
            }
            MetaAnalysis knapp = MetaAnalysis.withDefaults().with(method(method));
            RegressionFit fit = knapp.with(IntervalMethod.NORMAL)
                    .regress(effects(golden), moderators)
                    .orThrow();
            RegressionFit scaled = knapp.regress(effects(golden), moderators).orThrow();
            String key = "ablat." + method + ".";
            assertNear(fit.intercept().value(), golden.numbers(key + "beta")[0]);
            assertNear(fit.slopes().get(0).value(), golden.numbers(key + "beta")[1]);
            assertNear(fit.intercept().standardError(), golden.numbers(key + "se")[0]);
            assertNear(fit.slopes().get(0).standardError(), golden.numbers(key + "se")[1]);
            assertNear(scaled.slopes().get(0).standardError(), golden.numbers(key + "hk.se")[1]);
            assertNear(fit.heterogeneity().tauSquared(), golden.number(key + "tau2"));
            assertNear(fit.heterogeneity().iSquaredPct(), golden.number(key + "I2"));
            assertNear(fit.heterogeneity().hSquared(), golden.number(key + "H2"));
            assertNear(fit.heterogeneity().q(), golden.number(key + "QE"));
            assertNear(fit.logLikelihood(), golden.number(key + "logLik"));
        }

        @ParameterizedTest
        @ValueSource(strings = {"dat-bcg", "dat-normand1999"})
        void testsTheFunnelClassically(String data) {
            GoldenFile golden = golden(data);
            SmallStudyAsymmetry.Result result =
                    SmallStudyAsymmetry.classical(effects(golden)).orThrow();
            assertNear(result.slope().value(), golden.number("egger.classical.bias"));
            assertNear(result.slope().standardError(), golden.number("egger.classical.bias_se"));
            assertNear(result.slope().statistic(), golden.number("egger.classical.t"));
            assertNear(result.slope().pValue(), golden.number("egger.classical.p"));
            assertThat(result.slope().df()).isEqualTo(golden.number("egger.classical.df"));
            assertNear(result.limit().value(), golden.number("egger.classical.intercept"));
        }

        @ParameterizedTest
        @ValueSource(strings = {"dat-bcg", "dat-normand1999"})
        void testsTheFunnelWithAMixedModel(String data) {
            GoldenFile golden = golden(data);
            MetaAnalysis analysis = MetaAnalysis.withDefaults().with(IntervalMethod.NORMAL);
            SmallStudyAsymmetry.Result result =
                    SmallStudyAsymmetry.test(effects(golden), analysis).orThrow();
            assertNear(result.slope().statistic(), golden.number("egger.mixed.z"));
            assertNear(result.slope().pValue(), golden.number("egger.mixed.p"));
            assertNear(result.limit().value(), golden.number("egger.mixed.est_limit"));
            Interval limit = result.limit().interval();
            assertNear(limit, golden.number("egger.mixed.ci_lb"), golden.number("egger.mixed.ci_ub"));
        }
    }

    @Nested
    class WorkedExamples {

        private final GoldenFile golden = golden("worked-examples");

        private MetaFit pool(double[] y, double[] v, HeterogeneityMethod method) {
            List<StudyEffect> effects = new ArrayList<>();
            for (int i = 0; i < y.length; i++) {
                effects.add(new StudyEffect("study " + i, y[i], v[i]));
            }
            return MetaAnalysis.withDefaults()
                    .with(method)
                    .with(IntervalMethod.NORMAL)
                    .fit(effects)
                    .orThrow();
        }

        private void assertPrinted(double actual, String key) {
            GoldenFile.assertNear(actual, golden.number(key), golden.number("tolerance"));
        }

        @Test
        void cadmium() {
            double[] y = golden.numbers("cadmium.yi");
            double[] v = golden.numbers("cadmium.vi");
            MetaFit paule = pool(y, v, HeterogeneityMethod.PAULE_MANDEL);
            MetaFit moments = pool(y, v, HeterogeneityMethod.DERSIMONIAN_LAIRD);
            assertPrinted(paule.heterogeneity().q(), "cadmium.Q");
            assertPrinted(paule.heterogeneity().tauSquared(), "cadmium.PM.tau2");
            assertPrinted(paule.mean().value(), "cadmium.PM.mean");
            assertPrinted(paule.mean().standardError(), "cadmium.PM.se");
            assertPrinted(moments.heterogeneity().tauSquared(), "cadmium.DL.tau2");
            assertPrinted(moments.mean().value(), "cadmium.DL.mean");
        }

        @Test
        void tenStudies() {
            double[] v =
                    Arrays.stream(golden.numbers("teaching.se")).map(s -> s * s).toArray();
            MetaFit fit = pool(golden.numbers("teaching.yi"), v, HeterogeneityMethod.DERSIMONIAN_LAIRD);
            Interval prediction = fit.prediction().orElseThrow();
            assertPrinted(fit.mean().value(), "teaching.DL.mean");
            assertPrinted(fit.heterogeneity().tauSquared(), "teaching.DL.tau2");
            assertPrinted(fit.heterogeneity().q(), "teaching.Q");
            assertThat(prediction.lower()).isCloseTo(golden.numbers("teaching.prediction")[0], within(2e-6));
            assertThat(prediction.upper()).isCloseTo(golden.numbers("teaching.prediction")[1], within(2e-6));
        }
    }

    @Nested
    class Properties {

        /** At the Paule–Mandel root Q is k − 1, so both standard errors are the same (Paule & Mandel 1982). */
        @Test
        void hartungKnappEqualsTheNormalErrorAtThePauleMandelRoot() {
            GoldenFile golden = golden("dat-bcg");
            double knapp =
                    fit(golden, "PM", IntervalMethod.HARTUNG_KNAPP).mean().standardError();
            double normal = fit(golden, "PM", IntervalMethod.NORMAL).mean().standardError();
            GoldenFile.assertNear(knapp, normal, 1e-13);
        }

        @Test
        void shiftAndScaleOfTheEstimatesCarryThrough() {
            GoldenFile golden = golden("dat-bcg");
            List<StudyEffect> moved = effects(golden).stream()
                    .map(e -> new StudyEffect(e.label(), 1e6 + 8 * e.estimate(), 64 * e.variance()))
                    .toList();
            MetaFit plain = fit(golden, "REML", IntervalMethod.HARTUNG_KNAPP);
            MetaFit other = MetaAnalysis.withDefaults().fit(moved).orThrow();
            assertThat(other.mean().value()).isCloseTo(1e6 + 8 * plain.mean().value(), within(1e-8));
            double tauSquared = plain.heterogeneity().tauSquared();
            GoldenFile.assertNear(other.heterogeneity().tauSquared(), 64 * tauSquared, 1e-8);
        }

        @Test
        void theFlooredFormDoesNotNarrowByLuck() {
            MetaAnalysis analysis = MetaAnalysis.withDefaults();
            MetaFit plain = analysis.fit(AGREEING).orThrow();
            MetaFit floored = analysis.with(IntervalMethod.HARTUNG_KNAPP_FLOORED)
                    .fit(AGREEING)
                    .orThrow();
            GoldenFile.assertNear(plain.mean().standardError(), Math.sqrt(1e-4 / 3), 1e-12);
            GoldenFile.assertNear(floored.mean().standardError(), Math.sqrt(1.0 / 3), 1e-12);
        }

        @Test
        void roomsThatAgreeGiveNoHeterogeneity() {
            for (HeterogeneityMethod method : HeterogeneityMethod.values()) {
                Heterogeneity none = MetaAnalysis.withDefaults()
                        .with(method)
                        .fit(AGREEING)
                        .orThrow()
                        .heterogeneity();
                assertThat(none.tauSquared()).isZero();
                assertThat(none.iSquaredPct()).isZero();
                assertThat(none.tauSquaredInterval()).isEqualTo(new Interval(0, 0));
            }
        }
    }

    @Nested
    class Refusals {

        @Test
        void oneRoomIsTooFew() {
            assertRefused(MetaAnalysis.withDefaults().fit(TWO.subList(0, 1)), Cause.TOO_FEW);
        }

        @Test
        void equalEstimatesLeaveHartungKnappWithoutScatter() {
            List<StudyEffect> equal = List.of(new StudyEffect("a", 0.3, 1), new StudyEffect("b", 0.3, 2));
            MetaAnalysis analysis = MetaAnalysis.withDefaults();
            assertRefused(analysis.fit(equal), Cause.NO_VARIATION);
            MetaFit floored = analysis.with(IntervalMethod.HARTUNG_KNAPP_FLOORED)
                    .fit(equal)
                    .orThrow();
            assertThat(floored.mean().value()).isCloseTo(0.3, within(1e-15));
        }

        @Test
        void twoRoomsPoolButPredictNothing() {
            assertThat(MetaAnalysis.withDefaults().fit(TWO).orThrow().prediction())
                    .isEmpty();
            assertRefused(MetaAnalysis.withDefaults().leaveOneOut(TWO), Cause.TOO_FEW);
        }

        @Test
        void aModeratorThatNeverChangesIsCollinear() {
            assertRefused(MetaAnalysis.withDefaults().regress(THREE, new double[][] {{4}, {4}, {4}}), Cause.COLLINEAR);
        }

        @Test
        void equalErrorsShowNoFunnel() {
            assertRefused(SmallStudyAsymmetry.classical(AGREEING), Cause.NO_VARIATION);
            assertRefused(SmallStudyAsymmetry.classical(TWO), Cause.TOO_FEW);
        }

        @Test
        void misuseThrows() {
            assertThatThrownBy(() -> new StudyEffect("cellar", 1, 0)).hasMessageContaining("cellar");
            assertThatThrownBy(() -> new StudyEffect("cellar", Double.NaN, 1)).hasMessageContaining("finite");
            assertThatThrownBy(() -> MetaAnalysis.withDefaults().regress(TWO, new double[][] {{1}}))
                    .isInstanceOf(IllegalArgumentException.class);
        }

        private static void assertRefused(Answer<?> answer, Cause cause) {
            assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
        }
    }
}
