package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * Sessions of one kind from a stated truth, drawn from a seed: an outcome {@code level + slope h}, standard deviations
 * room 0.5 and session 0.25 of the trial's.
 */
final class KindLeague {

    /** Fills in a trial from the outcome that the truth gives it. */
    interface Filling {
        TrialDraft fill(TrialDraft draft, double outcome);
    }

    private final Kind kind;
    private final double level;
    private final double slope;
    private final double scatter;
    private final Filling filling;

    KindLeague(Kind kind, double level, double slope, double scatter, Filling filling) {
        this.kind = kind;
        this.level = level;
        this.slope = slope;
        this.scatter = scatter;
        this.filling = filling;
    }

    List<Held> drawn(int rooms, int sessions, int trials, long seed) {
        Random random = new Random(seed);
        List<Held> league = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double intercept = 0.5 * scatter * random.nextGaussian();
            for (int session = 0; session < sessions; session++) {
                league.add(session("room-" + room, "s" + session, trials, intercept, random));
            }
        }
        return league;
    }

    private Held session(String room, String session, int trials, double intercept, Random random) {
        double rhPct = 32 + 36 * random.nextDouble();
        double tempC = 19 + 4 * random.nextDouble();
        double shift = intercept + 0.25 * scatter * random.nextGaussian();
        List<Trial> drawn = new ArrayList<>();
        for (int number = 1; number <= trials; number++) {
            double rh = rhPct + 0.3 * random.nextGaussian();
            double outcome = level + shift + slope * (rh - 50) / 10 + scatter * random.nextGaussian();
            drawn.add(filling.fill(new TrialDraft(kind, number).climate(tempC, rh), outcome)
                    .build());
        }
        return new Held(
                new SessionDraft(room, session)
                        .table(2540, 1270)
                        .balls(57.15, 170)
                        .build(),
                drawn);
    }
}
