package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.schema.geometry.PathReduction.Reason;
import org.tableweather.schema.geometry.PathReduction.Refused;
import org.tableweather.schema.record.Contact;

/** Whether a ball could have taken a marked path at all. */
final class PathRules {

    private static final double SAME_PLACE_M = 1e-6;

    private final TableSize table;
    private final double toleranceM;

    PathRules(TableSize table, double toleranceM) {
        this.table = table;
        this.toleranceM = toleranceM;
    }

    static Optional<Refused> refused(Reason reason, int seq, String value, String bound, String remedy) {
        return Optional.of(new Refused(reason, seq, value, bound, remedy));
    }

    /** The first fault, in the order of the path. */
    Optional<Refused> fault(List<Mark> marks) {
        if (marks.size() < 2) {
            return refused(
                    Reason.TOO_FEW_POINTS,
                    0,
                    marks.size() + " points",
                    "at least 2",
                    "mark where the path begins, each rail contact, and a point after the last one");
        }
        for (int i = 0; i < marks.size(); i++) {
            Optional<Refused> fault = fault(marks, i);
            if (fault.isPresent()) {
                return fault;
            }
        }
        return increasingTimes(marks);
    }

    private Optional<Refused> fault(List<Mark> marks, int i) {
        Mark mark = marks.get(i);
        return place(marks, i)
                .or(() -> namedRail(mark))
                .or(() -> inside(mark))
                .or(() -> onRail(mark))
                .or(() -> i == 0 ? Optional.empty() : step(marks.get(i - 1), mark));
    }

    private static Optional<Refused> place(List<Mark> marks, int i) {
        Mark mark = marks.get(i);
        boolean startLate = mark.point() == Contact.Point.START && i > 0;
        boolean restEarly = mark.point() == Contact.Point.REST && i < marks.size() - 1;
        boolean twice = i > 0 && marks.get(i - 1).seq() == mark.seq();
        if (!startLate && !restEarly && !twice) {
            return Optional.empty();
        }
        return refused(
                Reason.OUT_OF_SEQUENCE,
                mark.seq(),
                mark.point().name().toLowerCase(Locale.ROOT) + " as point " + (i + 1) + " of " + marks.size(),
                "one start first, one rest last, each seq once",
                "number the points of one attempt 1, 2, 3 ... along its path");
    }

    private static Optional<Refused> namedRail(Mark mark) {
        if (!mark.isRail() || mark.rail().isPresent()) {
            return Optional.empty();
        }
        return refused(
                Reason.RAIL_NOT_NAMED,
                mark.seq(),
                "no rail",
                "head, foot, near or far",
                "name the rail that was touched");
    }

    /** Centres stay inside their rectangle; a ball that comes to rest in a pocket may be marked up to the noses. */
    private Optional<Refused> inside(Mark mark) {
        double outsideM = mark.point() == Contact.Point.REST ? beyondNosesM(mark.at()) : table.outsideM(mark.at());
        if (mark.isRail() || outsideM <= toleranceM) {
            return Optional.empty();
        }
        return refused(
                Reason.OUTSIDE_THE_BED,
                mark.seq(),
                String.format(Locale.ROOT, "%.1f mm outside", outsideM * 1000),
                String.format(Locale.ROOT, "at most %.1f mm", toleranceM * 1000),
                "mark the ball's centre, which stays one ball radius (" + radius() + ") inside the noses");
    }

    private double beyondNosesM(TablePoint at) {
        double along = Math.max(0, Math.max(-at.xM(), at.xM() - table.playingLengthM()));
        double across = Math.max(0, Math.max(-at.yM(), at.yM() - table.playingWidthM()));
        return Math.hypot(along, across);
    }

    private Optional<Refused> onRail(Mark mark) {
        if (!mark.isRail()) {
            return Optional.empty();
        }
        TablePoint held = table.heldTo(mark.rail().orElseThrow(), mark.at());
        double offM = mark.at().distanceM(held);
        double beyondM = table.outsideM(held);
        if (offM <= toleranceM && beyondM <= toleranceM) {
            return Optional.empty();
        }
        return refused(
                Reason.OFF_ITS_RAIL,
                mark.seq(),
                String.format(Locale.ROOT, "%.1f mm off, %.1f mm past its end", offM * 1000, beyondM * 1000),
                String.format(Locale.ROOT, "at most %.1f mm", toleranceM * 1000),
                "mark the ball's centre at the moment of contact: one ball radius (" + radius()
                        + ") inside the nose of the rail that is named");
    }

    private Optional<Refused> step(Mark before, Mark mark) {
        if (before.isRail() && mark.isRail() && before.rail().equals(mark.rail())) {
            return refused(
                    Reason.IMPOSSIBLE_ORDER,
                    mark.seq(),
                    mark.rail().orElseThrow().schemaName() + " after "
                            + before.rail().orElseThrow().schemaName(),
                    "another rail or a ball in between",
                    "add the contact that was left out, or correct the rail");
        }
        if (table.heldInside(place(before)).distanceM(table.heldInside(place(mark))) > SAME_PLACE_M) {
            return Optional.empty();
        }
        return refused(
                Reason.SAME_PLACE,
                mark.seq(),
                "the place of point " + before.seq(),
                "a leg longer than 0",
                "leave out one of the two points; for a ball in a corner mark one rail");
    }

    /** Where the ball is taken to have been: on its rail, inside, or for a rest, which may be in a pocket, as marked. */
    TablePoint place(Mark mark) {
        if (mark.isRail()) {
            return table.heldTo(mark.rail().orElseThrow(), mark.at());
        }
        return mark.point() == Contact.Point.REST ? mark.at() : table.heldInside(mark.at());
    }

    private static Optional<Refused> increasingTimes(List<Mark> marks) {
        double last = Double.NEGATIVE_INFINITY;
        for (Mark mark : marks) {
            if (mark.timeS() <= last) {
                return refused(
                        Reason.TIMES_NOT_INCREASING,
                        mark.seq(),
                        mark.timeS() + " s",
                        "later than " + last + " s",
                        "give seconds since the first point, or leave t_s empty");
            }
            last = Double.isNaN(mark.timeS()) ? last : mark.timeS();
        }
        return Optional.empty();
    }

    private String radius() {
        return String.format(Locale.ROOT, "%.2f diamond", table.ballRadiusM() / table.diamondAlongM());
    }
}
