package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedBootstrap;
import org.tableweather.analyzers.standard.statistics.NestedBootstrap.Draws;

/**
 * Intervals of the slope and of the change that lean on the fitted distributions, not on Student's t: percentiles of refits
 * to pools drawn from the fit.
 *
 * @source Davison1997
 */
final class HumidityBootstrap {

    private static final int LEAST_FOR_ENDS = 200;

    private HumidityBootstrap() {}

    static HumidityPart of(HumidityFit pooled) {
        int replicates = pooled.question().bootstrap();
        if (replicates == 0) {
            return HumidityPart.NOTHING;
        }
        if (pooled.fit().cautions().contains(Caution.MEANS_ONLY)) {
            return HumidityPart.warning("No bootstrap: the scatter of trials is unknown, so none can be drawn.");
        }
        double[][] rows = {pooled.columns().slopeRow(), pooled.curve().changeRow()};
        Draws draws = new NestedBootstrap(replicates, pooled.question().seed())
                .run(
                        pooled.model(),
                        pooled.fit(),
                        pooled.pool().rooms,
                        rows,
                        made -> pooled.listener().at("bootstrap", made, replicates));
        int sound = draws.values().get(0).length;
        if (sound < 2) {
            return HumidityPart.warning(
                    "No bootstrap: " + sound + " of " + replicates + " replicates could be fitted.");
        }
        String how = ", percentiles of " + sound + " refits to pools drawn from the fit (seed "
                + pooled.question().seed() + ")";
        List<Estimate> estimates = List.of(
                estimate("humidity.bootstrap", pooled, draws, 0, pooled.slopeUnit(), pooled.slopeMeaning() + how),
                estimate(
                        "humidity.change.bootstrap",
                        pooled,
                        draws,
                        1,
                        pooled.response().unit,
                        "change of the mean " + pooled.response().noun + " over the curve" + how));
        List<String> warnings = new ArrayList<>();
        if (sound < LEAST_FOR_ENDS) {
            warnings.add(Figures.counted(sound, "bootstrap replicate") + ", fewer than " + LEAST_FOR_ENDS
                    + ": the ends of its intervals are rough.");
        }
        return new HumidityPart(
                "",
                estimates,
                List.of(),
                warnings,
                Map.of("bootstrapReplicates", sound, "bootstrapFailed", draws.failed()));
    }

    private static Estimate estimate(
            String name, HumidityFit pooled, Draws draws, int contrast, String unit, String meaning) {
        double value = contrast == 0
                ? pooled.slope().value()
                : pooled.fit().contrast(pooled.curve().changeRow()).value();
        double tail = (1 - FitFigures.COVERAGE) / 2;
        return new Estimate(
                name,
                value,
                draws.deviation(contrast),
                null,
                draws.quantile(contrast, tail),
                draws.quantile(contrast, 1 - tail),
                unit,
                meaning);
    }
}
