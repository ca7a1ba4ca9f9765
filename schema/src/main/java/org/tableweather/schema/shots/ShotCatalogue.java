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
 * <p>Positions are of the ball's centre in the table frame. The centre stays one ball radius from a nose, and so the
 * rails' contacts lie at 0.09 diamonds from the nose line: a ball of 57.15 mm on a table of 2540 mm. On a table of
 * another size the ball starts at the same diamonds and is aimed at the same angle; contact and target then shift by a
 * few hundredths of a diamond.
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
            "kick-2-rail",
            "kick-3-rail",
            "kick-4-rail-corner");

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
