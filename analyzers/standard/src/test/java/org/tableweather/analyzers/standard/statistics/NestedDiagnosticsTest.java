package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.RoomScatter;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.ScatterTest;
import org.tableweather.analyzers.standard.statistics.NestedDiagnostics.SessionResidual;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

class NestedDiagnosticsTest {

    /** The other rooms' own criterion, at the same ratios, is the independent way to the same estimate. */
    @Test
    void leavesOneRoomOutAsIfItHadNeverBeenThere() {
        List<RoomSessions> rooms = GoldenCase.OATS.rooms();
        NestedFit fit = GoldenCase.OATS.fit(Method.REML);
        NestedDiagnostics diagnostics = new NestedDiagnostics(fit);
        double t = Math.sqrt(fit.sessionVariance().getAsDouble() / fit.sigma2());
        double l = Math.sqrt(fit.roomCovariance()[0][0] / fit.sigma2());

        for (int room = 0; room < rooms.size(); room++) {
            List<RoomSessions> others = new ArrayList<>(rooms);
            others.remove(room);
            NestedCriterion criterion = new NestedCriterion(
                    new NestedData(others),
                    new NestedParameters(new double[] {1}, true, NestedModel.Covariance.FREE),
                    new int[] {0},
                    Method.REML);
            criterion.evaluate(new double[] {t, l}, new double[2]);
            for (int i = 0; i < 2; i++) {
                double expected = criterion.top.coefficients[i] + (i == 0 ? criterion.data.responseCentre : 0);
                double[] row = {i == 0 ? 1 : 0, i};
                Quantity without = diagnostics.without(room, row).orElseThrow();
                assertThat(without.value()).isEqualTo(expected, within(1e-9 * Math.abs(expected)));
                double error = Math.sqrt(fit.sigma2() * criterion.top.inverse[i * 2 + i]);
                assertThat(without.standardError()).isEqualTo(error, within(1e-9 * error));
            }
        }
    }

    /**
     * Residuals of a session mean and the shrunken session effect belong together:
     * {@code w = v/(v + s²/n) (ȳ − x̄'b − z̄'u)}.
     *
     * @source Henderson1975
     */
    @Test
    void residualsAreWhatSessionEffectsAreShrunkenFrom() {
        NestedFit fit = GoldenCase.OATS.fit(Method.REML);
        List<SessionResidual> residuals = new NestedDiagnostics(fit).sessions();
        double v = fit.sessionVariance().getAsDouble();
        double shrink = v / (v + fit.sigma2() / 4);
        int at = 0;

        for (NestedFit.RoomEffect room : fit.rooms()) {
            for (NestedFit.SessionEffect session : room.sessions()) {
                SessionResidual residual = residuals.get(at++);
                assertThat(shrink * residual.residual()).isEqualTo(session.effect(), within(1e-9));
                assertThat(residual.standardised())
                        .isEqualTo(residual.residual() / Math.sqrt(v + fit.sigma2() / 4), within(1e-12));
            }
        }
        assertThat(residuals).hasSize(18);
    }

    /** Bartlett's statistic of two samples, written out for equal degrees of freedom. */
    @Test
    void testsEqualScatterByBartlettsFormula() {
        List<RoomSessions> rooms = new ArrayList<>();
        Random random = new Random(8);
        for (int room = 0; room < 12; room++) {
            List<Moments> sessions = new ArrayList<>();
            for (int session = 0; session < 4; session++) {
                MomentsBuilder builder = new MomentsBuilder(1);
                for (int trial = 0; trial < 25; trial++) {
                    builder.add(random.nextGaussian() * (room == 3 ? 2 : 1));
                }
                sessions.add(builder.build());
            }
            rooms.add(new RoomSessions("r" + room, sessions));
        }
        NestedDiagnostics diagnostics =
                new NestedDiagnostics((NestedFit) NestedModel.withDefaults().fit(rooms));
        List<RoomScatter> scatter = diagnostics.scatter();
        ScatterTest test = diagnostics.equalScatter().orElseThrow();
        double pooled = 0;
        double logarithms = 0;
        for (RoomScatter room : scatter) {
            assertThat(room.df()).isEqualTo(96);
            pooled += room.variance() / 12;
            logarithms += Math.log(room.variance());
        }
        double correction = 1 + (12 / 96.0 - 1 / (12 * 96.0)) / (3 * 11);

        assertThat(test.statistic()).isEqualTo(96 * (12 * Math.log(pooled) - logarithms) / correction, within(1e-9));
        assertThat(test.df()).isEqualTo(11);
        assertThat(test.pValue()).isLessThan(1e-6);
        assertThat(Math.sqrt(scatter.get(3).variance())).isEqualTo(2, within(0.5));
    }

    @Test
    void hasNoTestWhereNoSessionRepeats() {
        NestedFit fit = GoldenCase.DYESTUFF.fit(Method.REML);

        assertThat(new NestedDiagnostics(fit).equalScatter()).isPresent();
        List<RoomSessions> single = List.of(
                new RoomSessions("a", List.of(moment(1), moment(2.5))),
                new RoomSessions("b", List.of(moment(0), moment(1))));
        NestedFit alone = (NestedFit) NestedModel.withDefaults().fit(single);
        assertThat(new NestedDiagnostics(alone).equalScatter()).isEmpty();
    }

    private static Moments moment(double y) {
        return new Moments(1, new double[] {y}, new double[1]);
    }
}
