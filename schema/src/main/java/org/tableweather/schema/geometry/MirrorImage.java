package org.tableweather.schema.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Rail;

/**
 * The path of a perfect rail: each angle of rebound equals the angle of approach.
 *
 * <p>Laid out over the table mirrored about the lines one ball radius inside the noses, such a path is one straight line.
 * It is a yardstick, not a forecast: real rails grip and give.
 *
 * @source Coriolis1835
 */
public final class MirrorImage {

    private static final double SAME_PLACE_M = 1e-9;

    private final TableSize table;

    /**
     * On one table.
     *
     * @param table any size
     */
    public MirrorImage(TableSize table) {
        this.table = table;
    }

    /**
     * The path from one place to another over given rails.
     *
     * @param start ball's centre, inside the rectangle of centres
     * @param rails in order; may be empty
     * @param end ball's centre, inside the rectangle of centres
     */
    public MirrorPath between(TablePoint start, List<Rail> rails, TablePoint end) {
        if (isOutside(start) || isOutside(end)) {
            return outside(isOutside(start) ? start : end);
        }
        List<Fold> images = images(rails);
        TablePoint image = images.get(rails.size()).unfolded(end);
        List<TablePoint> points = new ArrayList<>(List.of(start));
        double last = 0;
        for (int i = 0; i < rails.size(); i++) {
            double share = share(start, image, images.get(i), rails.get(i));
            TablePoint contact = contact(start, image, share, images.get(i), rails.get(i));
            if (!(share > last && share <= 1) || isOutside(contact)) {
                return notInOrder(rails, i);
            }
            if (isCorner(contact)) {
                return corner(contact);
            }
            points.add(contact);
            last = share;
        }
        points.add(end);
        return new MirrorPath.Found(table, points, rails);
    }

    /**
     * The path of a ball sent off in a direction, up to its last contact.
     *
     * @param start ball's centre, inside the rectangle of centres
     * @param towards a point in the direction of travel; need not be on the table
     * @param contacts how many rail contacts to follow, ≥ 1; the last one ends the path
     */
    public MirrorPath shoot(TablePoint start, TablePoint towards, int contacts) {
        if (isOutside(start)) {
            return outside(start);
        }
        double dx = towards.xM() - start.xM();
        double dy = towards.yM() - start.yM();
        List<TablePoint> points = new ArrayList<>(List.of(start));
        List<Rail> rails = new ArrayList<>();
        TablePoint at = start;
        for (int i = 0; i < contacts; i++) {
            Optional<Rail> next = next(at, dx, dy);
            if (next.isEmpty()) {
                return new MirrorPath.Impossible(MirrorPath.Reason.NO_DIRECTION, "the ball meets no rail from " + at);
            }
            Rail rail = next.get();
            double steps = steps(at, dx, dy, rail);
            at = table.heldTo(rail, new TablePoint(at.xM() + steps * dx, at.yM() + steps * dy));
            if (isCorner(at)) {
                return corner(at);
            }
            points.add(at);
            rails.add(rail);
            dx = new RailFrame(rail).isShort() ? -dx : dx;
            dy = new RailFrame(rail).isShort() ? dy : -dy;
        }
        return new MirrorPath.Found(table, points, rails.subList(0, rails.size() - 1));
    }

    private List<Fold> images(List<Rail> rails) {
        List<Fold> images = new ArrayList<>(List.of(Fold.NONE));
        for (Rail rail : rails) {
            images.add(images.get(images.size() - 1).beyond(rail, table));
        }
        return images;
    }

    /** Which share of the straight line lies before this rail of this image; NaN or infinite when they are parallel. */
    private double share(TablePoint start, TablePoint image, Fold fold, Rail rail) {
        RailFrame frame = new RailFrame(rail);
        TablePoint line = fold.unfolded(frame.point(0, table.lineM(rail)));
        return (frame.across(line) - frame.across(start)) / (frame.across(image) - frame.across(start));
    }

    private TablePoint contact(TablePoint start, TablePoint image, double share, Fold fold, Rail rail) {
        TablePoint laidOut = new TablePoint(
                start.xM() + share * (image.xM() - start.xM()), start.yM() + share * (image.yM() - start.yM()));
        return table.heldTo(rail, fold.folded(laidOut));
    }

    /** The rail met first; a rail that the ball leaves or runs along is not met. */
    private Optional<Rail> next(TablePoint at, double dx, double dy) {
        Optional<Rail> first = Optional.empty();
        for (Rail rail : Rail.values()) {
            double steps = steps(at, dx, dy, rail);
            if (Double.isFinite(steps) && (first.isEmpty() || steps < steps(at, dx, dy, first.get()))) {
                first = Optional.of(rail);
            }
        }
        return first;
    }

    private double steps(TablePoint at, double dx, double dy, Rail rail) {
        RailFrame frame = new RailFrame(rail);
        double speed = frame.isShort() ? dx : dy;
        return speed * frame.inward() < 0 ? (table.lineM(rail) - frame.across(at)) / speed : Double.POSITIVE_INFINITY;
    }

    private boolean isOutside(TablePoint point) {
        return !(table.outsideM(point) <= SAME_PLACE_M);
    }

    private boolean isCorner(TablePoint contact) {
        double shortRail = Math.min(
                Math.abs(contact.xM() - table.lineM(Rail.HEAD)), Math.abs(contact.xM() - table.lineM(Rail.FOOT)));
        double longRail = Math.min(
                Math.abs(contact.yM() - table.lineM(Rail.NEAR)), Math.abs(contact.yM() - table.lineM(Rail.FAR)));
        return shortRail <= SAME_PLACE_M && longRail <= SAME_PLACE_M;
    }

    private static MirrorPath corner(TablePoint at) {
        return new MirrorPath.Impossible(MirrorPath.Reason.INTO_A_CORNER, "two rails at once at " + at);
    }

    private static MirrorPath outside(TablePoint at) {
        return new MirrorPath.Impossible(
                MirrorPath.Reason.OUTSIDE_THE_BED, "no ball's centre can be at " + at + ": it stays one radius inside");
    }

    private static MirrorPath notInOrder(List<Rail> rails, int i) {
        return new MirrorPath.Impossible(
                MirrorPath.Reason.RAILS_NOT_MET_IN_ORDER,
                "the straight line over the mirrored tables does not meet rail " + (i + 1) + " ("
                        + rails.get(i).schemaName() + ") where it should");
    }
}
