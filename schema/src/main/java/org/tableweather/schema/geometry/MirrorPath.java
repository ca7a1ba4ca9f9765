package org.tableweather.schema.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.tableweather.schema.record.Rail;

/** The path that a perfect rail would give, or why there is none. */
public sealed interface MirrorPath {

    /**
     * A path.
     *
     * @param table where
     * @param points start, each rail contact, end; ball's centre
     * @param rails the rails in order, one fewer than there are legs
     */
    record Found(TableSize table, List<TablePoint> points, List<Rail> rails) implements MirrorPath {

        public Found {
            points = List.copyOf(points);
            rails = List.copyOf(rails);
        }

        /** The sum of the legs, m. */
        public double lengthM() {
            double sum = 0;
            for (int i = 1; i < points.size(); i++) {
                sum += points.get(i - 1).distanceM(points.get(i));
            }
            return sum;
        }

        /** The contact with the {@code i}-th rail, from 0. */
        public TablePoint contact(int i) {
            return points.get(i + 1);
        }

        /** Angle of arrival at the {@code i}-th rail, from 0, degrees from its normal. */
        public double approachAngleDeg(int i) {
            return angleDeg(rails.get(i), points.get(i), points.get(i + 1));
        }

        /** Angle of departure from the {@code i}-th rail, from 0, degrees from its normal. */
        public double reboundAngleDeg(int i) {
            return angleDeg(rails.get(i), points.get(i + 1), points.get(i + 2));
        }

        /** The points laid out over the mirrored tables, where the path is one straight line. */
        public List<TablePoint> unfolded() {
            List<TablePoint> laidOut = new ArrayList<>();
            Fold fold = Fold.NONE;
            laidOut.add(points.get(0));
            for (int i = 1; i < points.size(); i++) {
                laidOut.add(fold.unfolded(points.get(i)));
                fold = i <= rails.size() ? fold.beyond(rails.get(i - 1), table) : fold;
            }
            return laidOut;
        }

        private static double angleDeg(Rail rail, TablePoint from, TablePoint to) {
            RailFrame frame = new RailFrame(rail);
            double along = frame.along(to) - frame.along(from);
            double across = frame.across(to) - frame.across(from);
            return Math.toDegrees(Math.atan2(Math.abs(along), Math.abs(across)));
        }
    }

    /**
     * No path.
     *
     * @param reason why
     * @param detail in words
     */
    record Impossible(Reason reason, String detail) implements MirrorPath {}

    /** Why there is no mirror path. */
    enum Reason {
        /** The straight line does not meet the rails in this order. */
        RAILS_NOT_MET_IN_ORDER,
        /** It meets two rails at once. */
        INTO_A_CORNER,
        /** A start or an end outside the rectangle of centres. */
        OUTSIDE_THE_BED,
        /** No direction: it would stand still, or run along a rail. */
        NO_DIRECTION
    }

    /** The value for whichever it is. */
    default <R> R fold(
            Function<? super Found, ? extends R> found, Function<? super Impossible, ? extends R> impossible) {
        if (this instanceof Found path) {
            return found.apply(path);
        }
        return impossible.apply((Impossible) this);
    }
}
