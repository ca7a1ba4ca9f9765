package org.tableweather.analyzers.standard.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of the Guide (JCGM 100:2008). Input data of H.1, H.2 and G.4.1 are from memory and from public copies; they give the
 * printed results.
 */
class GumExamplesTest {

    /** 4.3.7, 4.3.9 and H.1.3.4: a/√3 = 0.57735 a, a/√6 = 0.40825 a, a/√2 = 0.70711 a. */
    @Test
    void divisorsOfTypeBAreTheGuides() {
        assertThat(UncertainValue.rectangular(0, 1).standardUncertainty()).isCloseTo(0.57735, within(5e-6));
        assertThat(UncertainValue.triangular(0, 1).standardUncertainty()).isCloseTo(0.40825, within(5e-6));
        assertThat(UncertainValue.arcsine(0, 1).standardUncertainty()).isCloseTo(0.70711, within(5e-6));
        assertThat(UncertainValue.ofExpanded(0, 0.6, 2).standardUncertainty()).isCloseTo(0.3, within(1e-15));
    }

    /** G.4.1: relative components 0.25, 0.57, 0.82 % with 9, 4, 14 degrees of freedom: 1.03 %, 19.0, t₉₅ 2.09. */
    @Test
    void productOfThreeInputsHasNineteenDegreesOfFreedom() {
        UncertainInputs inputs = UncertainInputs.none()
                .and("x1", new UncertainValue(1, 0.0025, 9))
                .and("x2", new UncertainValue(1, 0.0057, 4))
                .and("x3", new UncertainValue(1, 0.0082, 14));
        UncertaintyBudget budget = Propagation.of(x -> x[0] * x[1] * x[2], inputs);
        assertThat(100 * budget.standardUncertainty()).isCloseTo(1.0294658809304948, within(1e-9));
        assertThat(budget.degreesOfFreedom().orElseThrow()).isCloseTo(19.0, within(0.05));
        assertThat(budget.coverageFactor(0.95)).isCloseTo(2.0930240544083087, within(1e-9));
    }

    /** H.1: components 25, 9.7, 2.9 and 16.6 nm (18, 25.6, 50 and 2 degrees of freedom): 32 nm, 16, t₉₉ 2.92, U₉₉ 93 nm. */
    @Test
    void endGaugeHasItsPrintedUncertainty() {
        UncertainInputs inputs = UncertainInputs.none()
                .and("standard", new UncertainValue(50_000_623, 25, 18))
                .and("difference", new UncertainValue(215, 9.7, 25.6))
                .and("expansion", new UncertainValue(0, 2.9, 50))
                .and("temperature", new UncertainValue(0, 16.6, 2));
        UncertaintyBudget budget = Propagation.of(x -> x[0] + x[1] + x[2] + x[3], inputs);
        assertThat(budget.value()).isCloseTo(50_000_838, within(1e-6));
        assertThat(budget.standardUncertainty()).isCloseTo(31.67, within(0.04));
        assertThat(budget.degreesOfFreedom().orElseThrow()).isCloseTo(16.7, within(0.1));
        assertThat(budget.coverageFactor(0.99)).isCloseTo(2.92, within(0.005));
        assertThat(budget.expanded(0.99)).isCloseTo(93, within(0.5));
    }

    /** H.2: voltage, current and phase read together in five sets. */
    @Test
    void resistanceReactanceAndImpedanceComeFromCorrelatedInputs() {
        UncertainInputs inputs = UncertainInputs.observedTogether(List.of("V", "I", "phi"), new double[][] {
            {5.007, 19.663e-3, 1.0456},
            {4.994, 19.639e-3, 1.0438},
            {5.005, 19.640e-3, 1.0468},
            {4.990, 19.685e-3, 1.0428},
            {4.999, 19.678e-3, 1.0433}
        });
        assertThat(inputs.correlation(0, 1)).isCloseTo(-0.355, within(0.0005));
        assertThat(inputs.correlation(0, 2)).isCloseTo(0.858, within(0.0005));
        assertThat(inputs.correlation(1, 2)).isCloseTo(-0.645, within(0.0005));

        UncertaintyBudget r = Propagation.of(x -> x[0] / x[1] * Math.cos(x[2]), inputs);
        UncertaintyBudget x = Propagation.of(v -> v[0] / v[1] * Math.sin(v[2]), inputs);
        UncertaintyBudget z = Propagation.of(v -> v[0] / v[1], inputs);
        printed(r, 127.732, 0.071);
        // Unrounded inputs give 0.296; the Guide prints 0.295.
        printed(x, 219.847, 0.296);
        printed(z, 254.260, 0.236);
        assertThat(r.degreesOfFreedom()).hasValue(4);
    }

    /** 4.2 and 5.2.3 applied to the same data: mean voltage 4.9990 V, u 0.0032 V; current 19.6610 mA, u 0.0095 mA. */
    @Test
    void meansOfObservationsAreTypeA() {
        UncertainValue volts = UncertainValue.ofObservations(5.007, 4.994, 5.005, 4.990, 4.999);
        assertThat(volts.value()).isCloseTo(4.9990, within(5e-5));
        assertThat(volts.standardUncertainty()).isCloseTo(0.0032, within(5e-5));
        assertThat(volts.degreesOfFreedom()).isEqualTo(4);
    }

    /** JCGM 101 (key JCGM101), 9.2.4: the Guide's interval for a sum of four rectangular inputs of unit variance is ± 3.92. */
    @Test
    void sumOfFourRectanglesHasTheGuidesInterval() {
        UncertainInputs inputs = UncertainInputs.none();
        for (int i = 1; i <= 4; i++) {
            inputs = inputs.and("x" + i, UncertainValue.rectangular(0, Math.sqrt(3)));
        }
        UncertaintyBudget budget = Propagation.of(x -> x[0] + x[1] + x[2] + x[3], inputs);
        assertThat(budget.standardUncertainty()).isCloseTo(2, within(1e-9));
        assertThat(budget.expanded(0.95)).isCloseTo(3.92, within(0.005));
    }

    /** 5.2.2, note 1: with all correlations at 1 the standard uncertainties of a sum add up. */
    @Test
    void fullCorrelationAddsLinearly() {
        UncertainInputs inputs = UncertainInputs.none()
                .and("a", UncertainValue.of(1, 3))
                .and("b", UncertainValue.of(2, 4))
                .correlated("a", "b", 1);
        assertThat(Propagation.of(x -> x[0] + x[1], inputs).standardUncertainty())
                .isCloseTo(7, within(1e-9));
        assertThat(Propagation.of(x -> x[0] - x[1], inputs).standardUncertainty())
                .isCloseTo(1, within(1e-9));
    }

    @Test
    void statesNoDegreesOfFreedomWhereTheFormulaDoesNotHold() {
        UncertainInputs inputs = UncertainInputs.none()
                .and("a", new UncertainValue(1, 3, 5))
                .and("b", new UncertainValue(2, 4, 7))
                .correlated("a", "b", 0.5);
        UncertaintyBudget budget = Propagation.of(x -> x[0] + x[1], inputs);
        assertThat(budget.degreesOfFreedom()).isEmpty();
        assertThatIllegalStateException()
                .isThrownBy(() -> budget.expanded(0.95))
                .withMessageContaining("correlated");
    }

    private static void printed(UncertaintyBudget budget, double value, double uncertainty) {
        assertThat(budget.value()).isCloseTo(value, within(0.0006));
        assertThat(budget.standardUncertainty()).isCloseTo(uncertainty, within(0.0005));
    }
}
