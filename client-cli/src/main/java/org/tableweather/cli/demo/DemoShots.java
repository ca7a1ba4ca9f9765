package org.tableweather.cli.demo;

import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/**
 * The two shots of the demonstration.
 *
 * @param pooled whose curve is shown
 * @param rebound the smaller set beside it
 */
public record DemoShots(Shot pooled, Shot rebound) {

    /** A kick off three rails and a rebound off one, both of the built-in catalogue. */
    public static DemoShots ofTheCatalogue() {
        return new DemoShots(shot("kick-3-rail"), shot("rebound-45-cue"));
    }

    private static Shot shot(String id) {
        return ShotCatalogue.byId(id)
                .orElseThrow(() -> new IllegalStateException("the catalogue of shots lacks " + id));
    }
}
