package org.tableweather.analyzers.standard.statistics;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Which of the given columns are in a fit; the constant is column 0 and always is.
 *
 * @param given number of columns, constant included, response not
 * @param kept covariates in the fit, counted without the constant, ascending
 * @param random columns with a room effect, counted with the constant; all of them kept
 */
record FitColumns(int given, List<Integer> kept, List<Integer> random) {

    /** A room's moments of these columns and the response. */
    RoomSessions select(RoomSessions room) {
        if (kept.size() == given - 1) {
            return room;
        }
        int[] columns = columns();
        return new RoomSessions(
                room.key(),
                room.sessions().stream().map(part -> part.select(columns)).toList());
    }

    /** Kept covariates, then the response. */
    int[] columns() {
        return IntStream.concat(kept.stream().mapToInt(Integer::intValue), IntStream.of(given - 1))
                .toArray();
    }

    /** Given columns that are not in the fit. */
    List<Integer> dropped() {
        return IntStream.range(1, given)
                .filter(column -> !kept.contains(column - 1))
                .boxed()
                .toList();
    }

    /** Position in the fit of a given column; −1 when it was dropped. */
    int position(int column) {
        if (column == 0) {
            return 0;
        }
        int position = kept.indexOf(column - 1);
        return position < 0 ? -1 : position + 1;
    }

    int[] randomPositions() {
        return random.stream().mapToInt(this::position).toArray();
    }

    /** A row over the given columns, at the fit's columns. */
    double[] reduce(double[] row) {
        if (row.length != given) {
            throw new IllegalArgumentException("a row needs " + given + " entries, got " + row.length);
        }
        double[] reduced = new double[kept.size() + 1];
        reduced[0] = row[0];
        for (int i = 0; i < kept.size(); i++) {
            reduced[i + 1] = row[kept.get(i) + 1];
        }
        return reduced;
    }
}
