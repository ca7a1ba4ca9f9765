package org.tableweather.analyzers.standard.statistics.interlab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class InterlaboratoryTest {

    private static final double TIGHT = 1e-11;

    private static GoldenFile golden(String data) {
        return GoldenFile.read("interlab/" + data + ".properties");
    }

    private static List<Laboratory> laboratories(GoldenFile golden) {
        List<Laboratory> laboratories = new ArrayList<>();
        for (String label : golden.words("labs")) {
            laboratories.add(Laboratory.of(label, golden.numbers("lab." + label)));
        }
        return laboratories;
    }

    private static void assertRefused(Answer<?> answer, Cause cause) {
        assertThat(answer.<Object>fold(value -> value, Refusal::cause)).isEqualTo(cause);
    }

    @Nested
    class WorkedExamples {

        @ParameterizedTest
        @ValueSource(strings = {"rail", "dyestuff", "gravity", "coop-s1", "coop-s4", "coop-s5"})
        void precision(String data) {
            GoldenFile golden = golden(data);
            Precision precision = Precision.of(laboratories(golden)).orThrow();
            GoldenFile.assertNear(precision.anova().mean(), golden.number("general_mean"), TIGHT);
            GoldenFile.assertNear(precision.anova().replicates(), golden.number("n_bar"), TIGHT);
            GoldenFile.assertNear(precision.anova().withinMeanSquare(), golden.number("s_r2"), TIGHT);
            GoldenFile.assertNear(precision.anova().betweenMeanSquare(), golden.number("s_d2"), TIGHT);
            GoldenFile.assertNear(precision.anova().rawBetweenVariance(), golden.number("s_L2_raw"), TIGHT);
            GoldenFile.assertNear(precision.anova().f(), golden.number("F"), TIGHT);
            GoldenFile.assertNear(precision.anova().pValue(), golden.number("F_p"), 1e-9);
            GoldenFile.assertNear(precision.repeatabilitySd(), golden.number("s_r"), TIGHT);
            GoldenFile.assertNear(precision.betweenSd(), golden.number("s_L"), TIGHT);
            GoldenFile.assertNear(precision.reproducibilitySd(), golden.number("s_R"), TIGHT);
            GoldenFile.assertNear(precision.repeatabilityLimit(), golden.number("repeatability_limit_2.8sr"), TIGHT);
            GoldenFile.assertNear(
                    precision.reproducibilityLimit(), golden.number("reproducibility_limit_2.8sR"), TIGHT);
            Interval interval = precision.repeatabilityInterval(Coverage.DEFAULT);
            GoldenFile.assertNear(interval.lower(), golden.numbers("s_r_ci95")[0], TIGHT);
            GoldenFile.assertNear(interval.upper(), golden.numbers("s_r_ci95")[1], TIGHT);
        }

        @ParameterizedTest
        @ValueSource(strings = {"rail", "dyestuff", "gravity", "coop-s1", "coop-s4", "coop-s5"})
        void consistency(String data) {
            GoldenFile golden = golden(data);
            Consistency consistency = Consistency.of(laboratories(golden)).orThrow();
            double[] h = golden.numbers("mandel_h");
            assertThat(consistency.laboratories()).hasSize(h.length);
            for (int i = 0; i < h.length; i++) {
                Consistency.Statistic statistic = consistency.laboratories().get(i);
                assertThat(statistic.h()).isCloseTo(h[i], within(1e-11));
                GoldenFile.assertNear(statistic.k().orElseThrow(), golden.numbers("mandel_k")[i], TIGHT);
            }
        }

        @ParameterizedTest
        @ValueSource(strings = {"rail", "dyestuff", "gravity", "coop-s1", "coop-s4", "coop-s5"})
        void outliers(String data) {
            GoldenFile golden = golden(data);
            CochranTest cochran = CochranTest.of(laboratories(golden)).orThrow();
            GrubbsTest grubbs = GrubbsTest.of(laboratories(golden)).orThrow();
            GoldenFile.assertNear(cochran.c(), golden.number("cochran_C"), TIGHT);
            assertThat(cochran.label()).isEqualTo(golden.text("cochran_lab"));
            GoldenFile.assertNear(grubbs.high().statistic(), golden.number("grubbs_G_high"), TIGHT);
            GoldenFile.assertNear(grubbs.low().statistic(), golden.number("grubbs_G_low"), TIGHT);
            GoldenFile.assertNear(
                    grubbs.twoHigh().orElseThrow().statistic(), golden.number("grubbs_two_high_ratio"), TIGHT);
            GoldenFile.assertNear(
                    grubbs.twoLow().orElseThrow().statistic(), golden.number("grubbs_two_low_ratio"), TIGHT);
        }

        /** The six laboratories of specimen S1: L4 is high at 5 % (1.960 > 1.887) and just short of 1 % (1.973). */
        @Test
        void aStragglerIsNotAnOutlier() {
            GrubbsTest grubbs = GrubbsTest.of(laboratories(golden("coop-s1"))).orThrow();
            assertThat(grubbs.high().labels()).containsExactly("L4");
            assertThat(grubbs.high().verdict()).isEqualTo(Verdict.STRAGGLER);
            assertThat(grubbs.low().verdict()).isEqualTo(Verdict.CORRECT);
            CochranTest cochran =
                    CochranTest.of(laboratories(golden("coop-s1"))).orThrow();
            assertThat(cochran.verdict()).isEqualTo(Verdict.OUTLIER);
        }
    }

    @Nested
    class AstmE691Glucose {

        private final GoldenFile golden = golden("astm-e691-glucose");

        private List<Laboratory> material(String material) {
            List<Laboratory> laboratories = new ArrayList<>();
            for (int i = 1; i <= 8; i++) {
                laboratories.add(Laboratory.of(Integer.toString(i), golden.numbers(material + "." + i)));
            }
            return laboratories;
        }

        @ParameterizedTest
        @ValueSource(strings = {"A", "D", "E"})
        void meetsThePrintedFourDecimals(String material) {
            double[] printed = golden.numbers(material + ".printed");
            double tolerance = golden.number("tolerance");
            Precision precision = Precision.of(material(material)).orThrow();
            double meansSd = Math.sqrt(precision.anova().betweenMeanSquare() / 3);
            assertThat(precision.anova().mean()).isCloseTo(printed[0], within(tolerance));
            assertThat(meansSd).isCloseTo(printed[1], within(tolerance));
            assertThat(precision.repeatabilitySd()).isCloseTo(printed[2], within(tolerance));
            assertThat(precision.reproducibilitySd()).isCloseTo(printed[3], within(tolerance));
        }

        @Test
        void flagsLaboratory2OnMaterialE() {
            Consistency consistency = Consistency.of(material("E")).orThrow();
            double criticalK = consistency.criticalK(0.005).orElseThrow();
            assertThat(criticalK).isCloseTo(golden.number("critical.k"), within(0.005));
            assertThat(consistency.criticalH(0.005)).isCloseTo(golden.number("critical.h"), within(0.005));
            assertThat(consistency.laboratories().get(1).k().orElseThrow())
                    .isCloseTo(golden.number("E.k.2"), within(0.005));
            List<String> flagged = consistency.laboratories().stream()
                    .filter(s -> s.k().orElseThrow() > criticalK || Math.abs(s.h()) > consistency.criticalH(0.005))
                    .map(Consistency.Statistic::label)
                    .toList();
            assertThat(flagged).containsExactly("2");
        }
    }

    @Nested
    class Degenerate {

        private final Laboratory steady = Laboratory.of("steady", 4, 4, 4);
        private final Laboratory single = Laboratory.of("single", 7);

        @Test
        void oneRoomIsTooFew() {
            assertRefused(Precision.of(List.of(Laboratory.of("a", 1, 2))), Cause.TOO_FEW);
            assertRefused(OneWayAnova.of(List.of(single, single)), Cause.TOO_FEW);
        }

        @Test
        void resultsThatNeverVaryGiveNoPrecision() {
            List<Laboratory> steadies = List.of(steady, Laboratory.of("other", 5, 5, 5), steady, single);
            assertRefused(Precision.of(steadies), Cause.NO_VARIATION);
            assertRefused(CochranTest.of(steadies), Cause.NO_VARIATION);
            assertThat(Consistency.of(steadies).orThrow().laboratories().get(0).k())
                    .isEmpty();
        }

        @Test
        void equalMeansHaveNoOutlier() {
            List<Laboratory> equal = List.of(steady, steady, steady, steady);
            assertRefused(GrubbsTest.of(equal), Cause.NO_VARIATION);
            assertRefused(Consistency.of(equal), Cause.NO_VARIATION);
            assertRefused(GrubbsTest.of(equal.subList(0, 3)), Cause.TOO_FEW);
            assertRefused(Consistency.of(equal.subList(0, 2)), Cause.TOO_FEW);
            assertRefused(CochranTest.of(List.of(steady, single)), Cause.TOO_FEW);
        }

        @Test
        void aNegativeVarianceBetweenRoomsIsZero() {
            List<Laboratory> alike = List.of(Laboratory.of("a", 1, 3), Laboratory.of("b", 1.9, 2.1));
            Precision precision = Precision.of(alike).orThrow();
            assertThat(precision.anova().rawBetweenVariance()).isNegative();
            assertThat(precision.betweenSd()).isZero();
            assertThat(precision.reproducibilitySd()).isEqualTo(precision.repeatabilitySd());
        }

        @Test
        void manyRoomsGetNoDoubleTest() {
            List<Laboratory> many = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                many.add(Laboratory.of("room " + i, i % 7));
            }
            GrubbsTest grubbs = GrubbsTest.of(many).orThrow();
            assertThat(grubbs.twoHigh()).isEmpty();
            assertThat(grubbs.high().verdict()).isEqualTo(Verdict.CORRECT);
            assertThatThrownBy(() -> CriticalValues.grubbsPair(0.05, 400)).hasMessageContaining("at most 100");
        }

        @Test
        void unlikeCountsTakeTheCommonest() {
            List<Laboratory> unlike = List.of(
                    Laboratory.of("a", 1, 3),
                    Laboratory.of("b", 1.9, 2.1),
                    Laboratory.of("c", 1, 2, 4),
                    Laboratory.of("d", 2, 2, 5));
            assertThat(CochranTest.of(unlike).orThrow().replicates()).isEqualTo(2);
        }

        @Test
        void misuseThrows() {
            assertThatThrownBy(() -> new Laboratory("cellar", 3, 1, -1)).hasMessageContaining("cellar");
            assertThatThrownBy(() -> new Laboratory("cellar", 0, 1, 0)).hasMessageContaining("cellar");
            assertThatThrownBy(() -> CriticalValues.cochran(0.05, 1, 3)).hasMessageContaining("at least 2, got 1");
            assertThatThrownBy(() -> CriticalValues.grubbs(1.5, 4)).hasMessageContaining("alpha");
        }
    }
}
