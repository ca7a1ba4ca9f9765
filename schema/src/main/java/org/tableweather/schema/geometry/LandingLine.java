package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * The rail along which a shot's landing is read.
 *
 * @param rail which
 * @param targetM coordinate of the target along it, m
 * @param longSign +1 when long is towards larger coordinates, −1 towards smaller; 0 when the shot does not say where it
 *     starts, so that each attempt's own travel decides
 */
record LandingLine(Rail rail, double targetM, int longSign) {

    /** Empty when the shot has no target rail. */
    static Optional<LandingLine> of(Shot shot, TableSize table) {
        if (shot.target().isEmpty() || shot.targetRail().isEmpty()) {
            return Optional.empty();
        }
        Rail rail = shot.targetRail().get();
        double targetM = new RailFrame(rail).along(table.point(shot.target().get()));
        int longSign = NominalPath.of(shot, table).fold(found -> travel(found, rail), impossible -> 0);
        return Optional.of(new LandingLine(rail, targetM, longSign));
    }

    /** A shot that comes straight at its target rail has no long side by itself: it is the side of larger coordinates. */
    private static int travel(MirrorPath.Found path, Rail rail) {
        List<TablePoint> points = path.points();
        RailFrame frame = new RailFrame(rail);
        double along = frame.along(points.get(points.size() - 1)) - frame.along(points.get(points.size() - 2));
        return along < -1e-9 ? -1 : 1;
    }

    int longSign(double travelM) {
        return longSign != 0 ? longSign : travelM < 0 ? -1 : 1;
    }
}
