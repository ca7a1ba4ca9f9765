package org.tableweather.analyzers.standard.statistics.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class RollingBallTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("spread/rolling.properties");
    private static final RollingBall BALL = new RollingBall(0.170, 0.05715, 0.5, 1.2);
    private static final RollingBall WITHOUT_AIR = new RollingBall(0.170, 0.05715, 0, 1.2);

    @Test
    void withoutAirItIsTheSchoolFormula() {
        assertThat(WITHOUT_AIR.distanceM(0.01, 1)).isCloseTo(GOLDEN.number("distance"), within(5e-7));
        assertThat(WITHOUT_AIR.timeS(0.01, 1)).isCloseTo(GOLDEN.number("time"), within(5e-7));
        RollingResistance length =
                WITHOUT_AIR.fromDistance(GOLDEN.number("length.speed"), GOLDEN.number("length.distance"));
        assertThat(length.coefficient()).isCloseTo(GOLDEN.number("length.mu"), within(1e-7));
        assertThat(length.airShare()).isCloseTo(0, within(1e-12));
        assertThat(length.naiveCoefficient()).isEqualTo(length.coefficient());
    }

    @Test
    void dragIsWhatTheFactsSay() {
        double[] speeds = GOLDEN.numbers("drag.speed");
        for (int i = 0; i < speeds.length; i++) {
            double expected = GOLDEN.numbers("drag.per.mass")[i];
            assertThat(BALL.dragForceN(speeds[i]) / BALL.massKg()).isCloseTo(expected, within(1e-2 * expected));
        }
        double rolling = new RollingResistance(0.01 / 1.4, 0, 0).forceCoefficient();
        assertThat(BALL.dragForceN(3) / (rolling * BALL.massKg() * RollingBall.GRAVITY))
                .isCloseTo(GOLDEN.number("drag.share"), within(5e-3));
    }

    @Test
    void theCentreStopsShortOfTheNoses() {
        double inch = 0.0254;
        assertThat(CentreTravel.metres(1, 100 * inch, 2.25 * inch) / inch)
                .isCloseTo(GOLDEN.number("centre.travel"), within(1e-12));
        assertThatThrownBy(() -> CentreTravel.metres(1, 0.05, 0.057)).hasMessageContaining("diameter");
    }

    /** The closed forms against steps of the equation of motion: {@code dv/dt = −(μg + F(v)/(7m/5))}, Heun's method. */
    @ParameterizedTest
    @CsvSource({"0.006, 0.8", "0.01, 2.5", "0.012, 4"})
    void meetsTheEquationOfMotion(double mu, double start) {
        double step = 1e-4;
        double speed = start;
        double way = 0;
        double time = 0;
        double half = 0;
        while (speed > 0) {
            double early = deceleration(mu, speed);
            double mean = (early + deceleration(mu, speed - early * step)) / 2;
            double part = Math.min(step, speed / mean);
            way += speed * part - mean * part * part / 2;
            speed -= mean * part;
            time += part;
            half = way < 1 ? speed : half;
            if (part < step) {
                break;
            }
        }
        assertThat(BALL.distanceM(mu, start)).isCloseTo(way, within(1e-5));
        assertThat(BALL.timeS(mu, start)).isCloseTo(time, within(1e-4));
        assertThat(BALL.speedMps(mu, start, 1)).isCloseTo(half, within(1e-3));
    }

    private static double deceleration(double mu, double speed) {
        return mu * 9.80665 + BALL.dragForceN(speed) / (1.4 * BALL.massKg());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1, 3})
    void findsTheCoefficientItWasRolledWith(double start) {
        double mu = 0.009;
        double way = BALL.distanceM(mu, start);
        double time = BALL.timeS(mu, start);
        RollingResistance byDistance = BALL.fromDistance(start, way);
        RollingResistance byTime = BALL.fromTime(way, time);
        RollingResistance byGates = BALL.fromGates(start, BALL.speedMps(mu, start, way / 3), way / 3)
                .orThrow();
        GoldenFile.assertNear(byDistance.coefficient(), mu, 1e-12);
        GoldenFile.assertNear(byTime.coefficient(), mu, 1e-12);
        GoldenFile.assertNear(byGates.coefficient(), mu, 1e-11);
        GoldenFile.assertNear(byTime.airShare(), byDistance.airShare(), 1e-9);
        assertThat(byDistance.naiveCoefficient()).isGreaterThan(mu);
        GoldenFile.assertNear(byDistance.naiveCoefficient() * (1 - byDistance.airShare()), mu, 1e-12);
    }

    @Test
    void aBallThatLosesLessThanTheAirTakesSaysNothing() {
        assertThat(BALL.fromGates(3, 2.995, 1).<Object>fold(value -> value, Refusal::cause))
                .isEqualTo(Cause.ERROR_SWAMPS);
    }

    @Test
    void misuseThrows() {
        assertThatThrownBy(() -> BALL.fromDistance(0, 1)).hasMessageContaining("start speed");
        assertThatThrownBy(() -> BALL.fromTime(1, -1)).hasMessageContaining("time");
        assertThatThrownBy(() -> new RollingBall(0, 0.057, 0.5, 1.2)).hasMessageContaining("mass");
    }
}
