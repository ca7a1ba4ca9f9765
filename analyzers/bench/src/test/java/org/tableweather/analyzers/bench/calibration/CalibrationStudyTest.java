package org.tableweather.analyzers.bench.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.bench.calibration.Judgement.Way;

/**
 * The study in small, from a fixed seed. Expected: the nominal 5 and 95 %, and an independent study's rate of more than half
 * for least squares on trials; bounds are four Monte-Carlo standard errors about what is asked of the full study.
 */
class CalibrationStudyTest {

    private static final int POOLS = 300;

    @Test
    void intervalsHoldTheTruthAboutAsOftenAsTheySay() {
        CalibrationStudy study = CalibrationStudy.of(new PoolDesign(8, 4, 20, -0.8, 0.25), POOLS, 7);
        double error = Math.sqrt(0.05 * 0.95 / POOLS);

        assertThat(study.missed(Way.DEFAULT)).isEqualTo(0.05, within(0.015 + 4 * error));
        assertThat(study.newRoomHeld()).isEqualTo(0.95, within(0.02 + 4 * error));
        assertThat(study.missed(Way.CLUSTER_ROBUST)).isEqualTo(0.05, within(0.015 + 4 * error));
        assertThat(study.missed(Way.TRIALS)).isGreaterThan(0.4);
        assertThat(study.missed(Way.KENWARD_ROGER)).isLessThan(study.missed(Way.DEFAULT));
    }

    @Test
    void countsAlikeFromTheSameSeed() {
        PoolDesign design = new PoolDesign(6, 3, 5, 0, 0);

        assertThat(CalibrationStudy.of(design, 20, 3).missed(Way.TRIALS))
                .isEqualTo(CalibrationStudy.of(design, 20, 3).missed(Way.TRIALS));
        assertThat(design.draw(11)).isEqualTo(design.draw(11)).isNotEqualTo(design.draw(12));
    }
}
