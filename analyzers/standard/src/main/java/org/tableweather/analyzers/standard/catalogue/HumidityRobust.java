package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.robust.Cluster;
import org.tableweather.analyzers.standard.statistics.robust.ClusterRegression;
import org.tableweather.analyzers.standard.statistics.robust.RobustEffect;
import org.tableweather.analyzers.standard.statistics.robust.RobustFit;

/**
 * The slope by least squares over trials with a covariance that only takes rooms as independent: it trusts no model of how
 * rooms and sessions vary, and weighs every trial alike.
 *
 * @source Bell2002
 * @source Pustejovsky2018
 */
final class HumidityRobust {

    private final HumidityFit pooled;

    HumidityRobust(HumidityFit pooled) {
        this.pooled = pooled;
    }

    HumidityPart part() {
        if (pooled.pool().rooms.size() < 3) {
            return HumidityPart.NOTHING;
        }
        int[] columns = pooled.plainColumns();
        List<Cluster> clusters = pooled.pool().rooms.stream()
                .map(room -> new Cluster(room.key(), room.merged().select(columns)))
                .toList();
        Answer<RobustFit> answer = ClusterRegression.withDefaults().fit(clusters);
        return answer.fold(this::told, HumidityRobust::refused);
    }

    private HumidityPart told(RobustFit fit) {
        RobustEffect slope = fit.coefficient(1);
        if (!Double.isFinite(slope.standardError()) || !(slope.df() > 0)) {
            return HumidityPart.NOTHING;
        }
        List<String> warnings = new ArrayList<>();
        if (!fit.decisive().isEmpty()) {
            warnings.add("The robust slope cannot be told without " + Figures.listed(fit.decisive())
                    + ": its standard error is too small.");
        }
        return new HumidityPart(
                "",
                List.of(
                        FitFigures.estimate(
                                "humidity.robust",
                                new Quantity(slope.value(), slope.standardError(), slope.df()),
                                pooled.slopeUnit(),
                                pooled.slopeMeaning()
                                        + ", by least squares with a cluster-robust (CR2) error by room: trusts no variance model")),
                List.of(),
                warnings,
                Map.of());
    }

    private static HumidityPart refused(Refusal refusal) {
        return HumidityPart.NOTHING;
    }
}
