package org.tableweather.analyzers.standard.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PropagationTest {

    /** Calculus: d(x³y)/dx = 3x²y, d/dy = x³; an exact input still has its sensitivity. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-6, 0.01, 1})
    void differencesGiveTheDerivative(double u) {
        UncertainInputs inputs =
                UncertainInputs.none().and("x", UncertainValue.of(2, u)).and("y", UncertainValue.of(-3, u));
        UncertaintyBudget budget = Propagation.of(x -> Math.pow(x[0], 3) * x[1], inputs);
        assertThat(budget.lines().get(0).sensitivity()).isCloseTo(-36, within(1e-5));
        assertThat(budget.lines().get(1).sensitivity()).isCloseTo(8, within(1e-5));
        assertThat(budget.value()).isEqualTo(-24);
        assertThat(budget.standardUncertainty()).isCloseTo(Math.hypot(36, 8) * u, within(1e-5 * (u + 1e-9)));
    }

    @Test
    void givenSensitivitiesAndDifferencesAgree() {
        UncertainInputs inputs = UncertainInputs.none()
                .and("a", UncertainValue.of(1.3, 0.02))
                .and("b", UncertainValue.of(0.7, 0.05))
                .correlated("a", "b", -0.4);
        UncertaintyBudget known = Propagation.of(Math.exp(0.6), new double[] {Math.exp(0.6), -Math.exp(0.6)}, inputs);
        UncertaintyBudget moved = Propagation.of(x -> Math.exp(x[0] - x[1]), inputs);
        assertThat(moved.standardUncertainty()).isCloseTo(known.standardUncertainty(), within(1e-10));
        assertThat(moved.lines().get(1).contribution()).isCloseTo(0.05 * Math.exp(0.6), within(1e-10));
    }

    @Test
    void twoRunsGiveTheSameBits() {
        UncertainInputs inputs = UncertainInputs.none().and("a", new UncertainValue(1.3, 0.02, 6));
        assertThat(Propagation.of(x -> Math.sin(x[0]), inputs)).isEqualTo(Propagation.of(x -> Math.sin(x[0]), inputs));
    }

    @Test
    void refusesWhatIsNoUncertainty() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UncertainValue.of(1, -0.1))
                .withMessageContaining("standardUncertainty -0.1");
        assertThatIllegalArgumentException().isThrownBy(() -> UncertainValue.of(Double.NaN, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> UncertainValue.rectangular(1, Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new UncertainValue(1, 1, 0.5))
                .withMessageContaining("degreesOfFreedom 0.5");
        assertThatIllegalArgumentException().isThrownBy(() -> UncertainValue.ofExpanded(1, 1, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UncertainValue.ofObservations(3))
                .withMessageContaining("1 < 2");
    }

    @Test
    void refusesCorrelationsThatCannotBe() {
        UncertainInputs three = UncertainInputs.none()
                .and("a", UncertainValue.of(0, 1))
                .and("b", UncertainValue.of(0, 1))
                .and("c", UncertainValue.of(0, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> three.correlated("a", "b", 1.1))
                .withMessageContaining("1.1");
        assertThatIllegalArgumentException().isThrownBy(() -> three.correlated("a", "a", 0.5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> three.correlated("a", "d", 0.5))
                .withMessageContaining("no input d");
        assertThatIllegalArgumentException().isThrownBy(() -> three.and("a", UncertainValue.exact(1)));
        impossible(three.correlated("a", "b", 0.9).correlated("b", "c", 0.9).correlated("a", "c", -0.9));
        impossible(three.correlated("a", "b", 1).correlated("b", "c", 0.5));
        UncertainInputs possible =
                three.correlated("a", "b", 0.9).correlated("b", "c", 0.9).correlated("a", "c", 0.8);
        assertThat(Propagation.of(x -> x[0] + x[1] + x[2], possible).standardUncertainty())
                .isCloseTo(Math.sqrt(3 + 2 * (0.9 + 0.9 + 0.8)), within(1e-9));
    }

    private static void impossible(UncertainInputs inputs) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Propagation.of(x -> x[0] + x[1] + x[2], inputs))
                .withMessageContaining("cannot hold together");
    }

    @Test
    void readsQuantitiesThatDoNotVary() {
        UncertainInputs inputs =
                UncertainInputs.observedTogether(List.of("a", "b"), new double[][] {{1, 2}, {1, 3}, {1, 4}});
        assertThat(inputs.correlation(0, 1)).isZero();
        assertThat(inputs.estimates()).containsExactly(1, 3);
    }

    @Test
    void wantsOneSensitivityPerInput() {
        UncertainInputs one = UncertainInputs.none().and("a", UncertainValue.exact(1));
        assertThatIllegalArgumentException().isThrownBy(() -> Propagation.of(1, new double[] {1, 2}, one));
        UncertaintyBudget budget = Propagation.of(1, new double[] {1}, one);
        assertThat(budget.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> budget.coverageFactor(1))
                .withMessageContaining("level 1.0");
    }
}
