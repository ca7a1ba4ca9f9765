package org.tableweather.schema.shots;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.Shot;

/**
 * The built-in diagnostic shots. A contribution cites them by id.
 *
 * <p>Positions are of the ball's centre in the table frame. A rail shot is fixed by its start, its rails and its target, in
 * diamonds that are the same on every table; its aim and its angle of approach are those of a perfect rail, printed for a
 * table of 2540 mm and a ball of 57.15 mm, whose centre stays 0.09 diamond from the noses. On another table the same
 * definition gives them anew ({@link org.tableweather.schema.geometry.NominalPath}): they move by less than 0.05 diamond and
 * 0.5° over the published sizes.
 */
public final class ShotCatalogue {
    /** Radius of a pool ball on a table of 2540 mm, diamonds. */
    public static final double BALL_RADIUS_DIA = 0.09;

    private static final List<String> IDS = List.of(
            "rebound-30-ramp",
            "rebound-45-ramp",
            "rebound-60-ramp",
            "rebound-30-cue",
            "rebound-45-cue",
            "rebound-60-cue",
            "bank-1-rail-side",
            "bank-2-rail",
            "bank-3-rail",
            "kick-2-rail",
            "kick-3-rail",
            "kick-4-rail",
            "kick-5-rail",
            "kick-6-rail",
            "roll-out-ramp",
            "break-15",
            "throw-half-ball",
            "deflection-long",
            "hop-drop");

    private static final List<Shot> ALL = IDS.stream().map(ShotCatalogue::load).toList();

    private ShotCatalogue() {}

    /** All shots of the catalogue. */
    public static List<Shot> all() {
        return ALL;
    }

    /**
     * The shot of this id.
     *
     * @param id as trials cite it
     */
    public static Optional<Shot> byId(String id) {
        return ALL.stream().filter(shot -> shot.id().equals(id)).findFirst();
    }

    private static Shot load(String id) {
        String resource = "/schema/v1/shots/" + id + ".json";
        try (InputStream in = ShotCatalogue.class.getResourceAsStream(resource)) {
            return ContributionJson.readShot(in);
        } catch (IOException e) {
            throw new UncheckedIOException(resource, e);
        }
    }
}
