package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The sessions of all rooms in flat arrays, columns {@code [1, x₁ … x₍p₋₁₎, y]}, y less its grand mean.
 *
 * <p>Matrices are m × m by rows, whole; the row and the column of the constant are zero.
 */
final class NestedData {

    /** Number of columns, constant and response included. */
    final int width;

    final int rooms;
    final int sessions;
    final long trials;
    /** First session of each room, and the number of sessions at the end. */
    final int[] firstSession;

    final double[] count;
    final double[] mean;
    /** Per room the sum of its sessions' centred cross-products. */
    final double[] within;

    final double responseCentre;
    /** Root mean square of each column over all trials. */
    final double[] rms;

    NestedData(List<RoomSessions> from) {
        this(from, Moments.merged(sessionsOf(from)));
    }

    /** With all sessions merged, where that is known. */
    NestedData(List<RoomSessions> from, Moments total) {
        int response = total.columns() - 1;
        width = response + 2;
        rooms = from.size();
        sessions = from.stream().mapToInt(room -> room.sessions().size()).sum();
        trials = total.n();
        responseCentre = total.mean(response);
        firstSession = new int[rooms + 1];
        count = new double[sessions];
        mean = new double[sessions * width];
        within = new double[rooms * width * width];
        for (int room = 0, session = 0; room < rooms; room++) {
            for (Moments part : from.get(room).sessions()) {
                place(session++, room, part);
            }
            firstSession[room + 1] = session;
        }
        rms = rootMeanSquares(total);
    }

    static List<Moments> sessionsOf(List<RoomSessions> rooms) {
        List<Moments> all = new ArrayList<>();
        rooms.forEach(room -> all.addAll(room.sessions()));
        return all;
    }

    private void place(int session, int room, Moments part) {
        int columns = part.columns();
        count[session] = part.n();
        mean[session * width] = 1;
        for (int i = 0; i < columns; i++) {
            mean[session * width + 1 + i] = part.mean(i) - (i == columns - 1 ? responseCentre : 0);
            for (int j = 0; j < columns; j++) {
                within[(room * width + 1 + i) * width + 1 + j] += part.cross(i, j);
            }
        }
    }

    private double[] rootMeanSquares(Moments total) {
        double[] sizes = new double[width];
        Arrays.fill(sizes, 1);
        for (int i = 1; i < width - 1; i++) {
            double square = total.cross(i - 1, i - 1) / trials + total.mean(i - 1) * total.mean(i - 1);
            sizes[i] = Math.sqrt(square);
        }
        return sizes;
    }
}
