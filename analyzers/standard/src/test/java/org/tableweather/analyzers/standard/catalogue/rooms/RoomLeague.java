package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.tableweather.analyzers.spi.AnalyzerContract.Example;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * Trials from a stated truth, drawn from a seed: angle 32 − 0.8 h, standard deviations room 1, session 0.5, trial 2, and of
 * the room slope as given; sessions at 30 to 70 %RH.
 */
public final class RoomLeague {

    static final double SLOPE = -0.8;

    private RoomLeague() {}

    public static List<Held> drawn(int rooms, int sessions, int trials, double slopeSd, long seed) {
        Random random = new Random(seed);
        List<Held> league = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double level = 32 + random.nextGaussian();
            double slope = SLOPE + slopeSd * random.nextGaussian();
            for (int session = 0; session < sessions; session++) {
                double rhPct = 30 + 40 * random.nextDouble();
                double mean = level + slope * (rhPct - 50) / 10 + 0.5 * random.nextGaussian();
                List<Trial> drawn = new ArrayList<>();
                for (int trial = 1; trial <= trials; trial++) {
                    drawn.add(trial(trial, 18 + 6 * random.nextDouble(), rhPct, mean + 2 * random.nextGaussian()));
                }
                league.add(held(key(room), session, drawn));
            }
        }
        return league;
    }

    public static String key(int room) {
        return String.format(Locale.ROOT, "league/room-%03d", room);
    }

    public static Held held(String room, int session, List<Trial> trials) {
        return new Held(new SessionDraft(room, "s" + session).build(), trials);
    }

    public static Trial trial(int number, double tempC, double rhPct, double angleDeg) {
        return new TrialDraft(Kind.KICK, number)
                .climate(tempC, rhPct)
                .with(Column.FINAL_REBOUND_ANGLE_DEG, angleDeg)
                .build();
    }

    public static List<Example> examples(List<Held> league) {
        return league.stream()
                .map(held -> new Example(held.session(), held.trials()))
                .toList();
    }
}
