package org.tableweather.analyzers.bench;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * An invented pool as columns in memory, as R holds a data frame: trial by trial, session by session, room by room. The truth is that of
 * {@link InventedPool}.
 *
 * @param rooms how many rooms
 * @param sessions in each room
 * @param trials in each session
 * @param rhPct a column, %
 * @param tempC a column, °C
 * @param angleDeg a column, the final rebound angle, degrees
 */
record HeldTrials(int rooms, int sessions, int trials, double[] rhPct, double[] tempC, double[] angleDeg) {

    static HeldTrials draw(int rooms, int sessions, int trials, long seed) {
        int n = Math.multiplyExact(Math.multiplyExact(rooms, sessions), trials);
        HeldTrials drawn = new HeldTrials(rooms, sessions, trials, new double[n], new double[n], new double[n]);
        SplittableRandom random = new SplittableRandom(seed);
        for (int room = 0; room < rooms; room++) {
            double intercept = random.nextGaussian(32, 1);
            double slope = random.nextGaussian(-0.8, 0.25);
            for (int session = 0; session < sessions; session++) {
                drawn.fill(room * sessions + session, intercept + random.nextGaussian(0, 0.5), slope, random);
            }
        }
        return drawn;
    }

    private void fill(int session, double intercept, double slope, SplittableRandom random) {
        double heldPct = 32 + 36 * random.nextDouble();
        double heldC = 18 + 7 * random.nextDouble();
        for (int i = session * trials; i < (session + 1) * trials; i++) {
            rhPct[i] = heldPct + random.nextGaussian(0, 0.4);
            tempC[i] = heldC + random.nextGaussian(0, 0.1);
            double h = (rhPct[i] - 50) / 10;
            angleDeg[i] = intercept + slope * h + 0.05 * h * h + 0.1 * (tempC[i] - 21) / 5 + random.nextGaussian(0, 2);
        }
    }

    /** Writes three counts, then the columns, all as big-endian doubles: R reads them with {@code readBin}. */
    void write(Path file) throws IOException {
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file), 1 << 16))) {
            for (double count : new double[] {rooms, sessions, trials}) {
                out.writeDouble(count);
            }
            for (double[] column : List.of(rhPct, tempC, angleDeg)) {
                for (double figure : column) {
                    out.writeDouble(figure);
                }
            }
        }
    }

    static HeldTrials read(Path file) throws IOException {
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16))) {
            int rooms = (int) in.readDouble();
            int sessions = (int) in.readDouble();
            int trials = (int) in.readDouble();
            int n = rooms * sessions * trials;
            return new HeldTrials(rooms, sessions, trials, column(in, n), column(in, n), column(in, n));
        }
    }

    private static double[] column(DataInputStream in, int n) throws IOException {
        double[] column = new double[n];
        for (int i = 0; i < n; i++) {
            column[i] = in.readDouble();
        }
        return column;
    }

    /** One pass over the data: the moments of h, h², t and the angle for every session. */
    List<RoomSessions> pass() {
        List<RoomSessions> passed = new ArrayList<>(rooms);
        for (int room = 0; room < rooms; room++) {
            List<Moments> held = new ArrayList<>(sessions);
            for (int session = room * sessions; session < (room + 1) * sessions; session++) {
                held.add(moments(session));
            }
            passed.add(new RoomSessions(String.format(Locale.ROOT, "r%05d", room), held));
        }
        return passed;
    }

    private Moments moments(int session) {
        MomentsBuilder builder = new MomentsBuilder(4);
        for (int i = session * trials; i < (session + 1) * trials; i++) {
            double h = (rhPct[i] - 50) / 10;
            builder.add(h, h * h, (tempC[i] - 21) / 5, angleDeg[i]);
        }
        return builder.build();
    }
}
