package org.tableweather.analyzers.bench.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * Pools as the default model has them: angle 32 + slope h + 0.05 h² + 0.1 t; standard deviations room 1, session 0.5, trial 2;
 * rooms at 50 ± 8 %RH and sessions ± 12 %RH about their room, all normal, humidity held within a session but for 0.4 %RH.
 *
 * @param rooms number of rooms
 * @param sessions in each room
 * @param trials in each session
 * @param slope true change of the mean per 10 %RH at 50 %RH
 * @param slopeDeviation standard deviation of rooms' own slopes
 */
record PoolDesign(int rooms, int sessions, int trials, double slope, double slopeDeviation) {

    static final double BEND = 0.05;
    static final double WARMTH = 0.1;

    /** A room's own departures from the average room. */
    record TrueRoom(double intercept, double slope) {}

    /** A pool, columns h, h², t, response; and a room that is not in it. */
    record DrawnPool(List<RoomSessions> rooms, TrueRoom newRoom) {}

    DrawnPool draw(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<RoomSessions> drawn = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            TrueRoom own = room(random);
            double climate = 0.8 * random.nextGaussian();
            List<Moments> held = new ArrayList<>();
            for (int session = 0; session < sessions; session++) {
                held.add(session(own, climate + 1.2 * random.nextGaussian(), random));
            }
            drawn.add(new RoomSessions("room " + room, held));
        }
        return new DrawnPool(drawn, room(random));
    }

    private TrueRoom room(SplittableRandom random) {
        return new TrueRoom(random.nextGaussian(), slopeDeviation * random.nextGaussian());
    }

    private Moments session(TrueRoom own, double held, SplittableRandom random) {
        double temperature = 0.5 * random.nextGaussian();
        double shift = 0.5 * random.nextGaussian();
        MomentsBuilder builder = new MomentsBuilder(4);
        for (int trial = 0; trial < trials; trial++) {
            double h = held + 0.04 * random.nextGaussian();
            double t = temperature + 0.02 * random.nextGaussian();
            double mean = mean(h) + WARMTH * t + own.intercept() + own.slope() * h;
            builder.add(h, h * h, t, mean + shift + 2 * random.nextGaussian());
        }
        return builder.build();
    }

    /** Of an average room at 21 °C. */
    double mean(double h) {
        return 32 + slope * h + BEND * h * h;
    }
}
