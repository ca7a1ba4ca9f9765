package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Locale;

/**
 * A direction in which rail and cloth are unknown, one standard deviation long.
 *
 * @param group whose ignorance it is
 * @param rail how the rail's coefficients move along it
 * @param cloth how the cloth's move along it
 * @param ofCloth which of the cloth's coefficients it is, or {@link #NO_CLOTH}
 */
record UnknownDirection(Group group, double[] rail, double[] cloth, int ofCloth) {

    static final int NO_CLOTH = -1;

    /** What is not known. */
    enum Group {
        /** The coefficients of the average rail. */
        RAIL,
        /** What the room adds. */
        ROOM,
        /** The cloth. */
        CLOTH,
        /** What a session adds. */
        SESSION,
        /** What an attempt adds. */
        ATTEMPT;

        String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    double[] movedRail(double[] from, double by) {
        return moved(from, rail, by);
    }

    double[] movedCloth(double[] from, double by) {
        return moved(from, cloth, by);
    }

    private static double[] moved(double[] from, double[] direction, double by) {
        double[] moved = from.clone();
        for (int i = 0; i < moved.length; i++) {
            moved[i] += by * direction[i];
        }
        return moved;
    }
}
