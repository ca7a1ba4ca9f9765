package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.NestedModel;

/** The pooled model of some columns: room intercept and slope, and a curve's wiggles drawn together. */
final class HumidityModels {

    private HumidityModels() {}

    /**
     * The model.
     *
     * @param more columns that stand before the wiggles in addition
     */
    static NestedModel of(HumidityColumns columns, int more) {
        NestedModel model = NestedModel.withDefaults().withRandom(0, 1);
        List<Integer> wiggles =
                columns.wiggles().stream().map(column -> column + more).toList();
        return wiggles.isEmpty() ? model : model.withSmooth(wiggles);
    }
}
