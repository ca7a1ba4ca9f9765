package org.tableweather.cli.demo;

import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/**
 * The three shots of the demonstration.
 *
 * @param pooled whose curve is shown
 * @param rebound the smaller set beside it, off one rail
 * @param path the smaller set whose landings follow from ball and rails
 */
public record DemoShots(Shot pooled, Shot rebound, Shot path) {

    /** A kick off three rails, a rebound off one and a kick off two, all of the built-in catalogue. */
    public static DemoShots ofTheCatalogue() {
        return new DemoShots(shot("kick-3-rail"), shot("rebound-45-cue"), shot("kick-2-rail"));
    }

    private static Shot shot(String id) {
        return ShotCatalogue.byId(id)
                .orElseThrow(() -> new IllegalStateException("the catalogue of shots lacks " + id));
    }
}
