package org.tableweather.schema.geometry;

import java.util.Optional;
import org.tableweather.schema.record.Shot;

/**
 * The path of a test shot on a table of a given size, if its rails were perfect.
 *
 * <p>A shot with rails and a target is fixed by three things in diamonds: where the ball starts, the rails in order, and
 * the target. The aim and the angle of approach follow from them by mirror image, so the shot is consistent on a table and
 * with a ball of any size. The aim and the angle printed in a shot's definition are those of
 * {@link TableSize#REFERENCE}; over the published sizes they move by less than 0.05 diamond and 0.5°, because a ball is
 * not the same part of a diamond everywhere.
 *
 * <p>Coordinates on or beyond the line where a ball touches a rail mean that line: a target {@code y = 0} on the near rail
 * is a ball that touches the near rail.
 *
 * @source Coriolis1835
 */
public final class NominalPath {

    private NominalPath() {}

    /**
     * The path on a table.
     *
     * @param shot its start, and a target or an aim
     * @param table any size
     * @return impossible when the shot does not say enough, or its rails cannot be met in this order
     */
    public static MirrorPath of(Shot shot, TableSize table) {
        if (shot.start().isEmpty() || (shot.target().isEmpty() && shot.aim().isEmpty())) {
            return new MirrorPath.Impossible(
                    MirrorPath.Reason.NO_DIRECTION, "the shot names no start, or neither target nor aim");
        }
        TablePoint start = table.heldInside(table.point(shot.start().get()));
        Optional<TablePoint> target = target(shot, table);
        if (target.isPresent()) {
            return new MirrorImage(table).between(start, shot.rails(), target.get());
        }
        TablePoint aim = table.heldInside(table.point(shot.aim().orElseThrow()));
        return shot.rails().isEmpty()
                ? new MirrorImage(table).between(start, shot.rails(), aim)
                : towards(shot, start, aim, table);
    }

    private static MirrorPath towards(Shot shot, TablePoint start, TablePoint aim, TableSize table) {
        MirrorPath path = new MirrorImage(table).shoot(start, aim, shot.rails().size() + 1);
        return path.fold(
                found -> found.rails().equals(shot.rails())
                        ? found
                        : new MirrorPath.Impossible(
                                MirrorPath.Reason.RAILS_NOT_MET_IN_ORDER,
                                "from this aim the rails are " + found.rails()),
                impossible -> impossible);
    }

    private static Optional<TablePoint> target(Shot shot, TableSize table) {
        return shot.target()
                .map(table::point)
                .map(place -> shot.targetRail()
                        .map(rail -> table.heldTo(rail, place))
                        .map(table::heldInside)
                        .orElseGet(() -> table.heldInside(place)));
    }
}
