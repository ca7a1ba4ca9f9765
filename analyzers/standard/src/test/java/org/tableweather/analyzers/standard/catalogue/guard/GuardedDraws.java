package org.tableweather.analyzers.standard.catalogue.guard;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleFunction;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Pools of six rooms, five sessions each, of twelve kept attempts, outcome normal with deviation 1, session deviation 0.3, −0.5
 * per 10 %RH; climates in an order drawn by lot.
 */
final class GuardedDraws {

    static final int ROOMS = 6;
    static final int SESSIONS = 5;
    static final int TRIALS = 12;

    private final Random random;
    /** Which deviations are kept; the others are shot again. */
    DoublePredicate kept = deviation -> true;
    /** Change from one attempt to the next. */
    double drift;
    /** Change from one session to the next. */
    double wear;
    /** Climates from dry to damp in every room. */
    boolean ascending;
    /** Who shoots at a humidity. */
    DoubleFunction<String> shooter = rhPct -> "one";

    GuardedDraws(long seed) {
        random = new Random(seed);
    }

    List<GuardedSession> pool() {
        List<GuardedSession> pool = new ArrayList<>();
        for (int room = 0; room < ROOMS; room++) {
            List<Double> climates =
                    new ArrayList<>(DoubleStream.of(35, 43, 50, 57, 65).boxed().toList());
            if (!ascending) {
                Collections.shuffle(climates, random);
            }
            for (int session = 0; session < SESSIONS; session++) {
                pool.add(session("room-" + room, session, climates.get(session)));
            }
        }
        return pool;
    }

    private GuardedSession session(String room, int number, double rhPct) {
        double mean = 0.3 * random.nextGaussian() - 0.5 * (rhPct - 50) / 10 + wear * number;
        List<Trial> trials = new ArrayList<>();
        while (trials.size() < TRIALS) {
            double deviation = random.nextGaussian();
            if (kept.test(deviation)) {
                trials.add(new TrialDraft(Kind.HOP, trials.size() + 1)
                        .climate(21, rhPct)
                        .with(TrialDraft.Column.HOP_HEIGHT_MM, mean + drift * trials.size() + deviation)
                        .build());
            }
        }
        SessionRecord session = new SessionDraft(room, "s" + number)
                .started(Instant.ofEpochSecond(1_700_000_000L + 86_400L * number)
                        .atOffset(ZoneOffset.UTC)
                        .toString())
                .shooter(shooter.apply(rhPct))
                .build();
        return guarded(session, trials);
    }

    static GuardedSession guarded(SessionRecord session, List<Trial> trials) {
        return new GuardedSession(
                session.roomKey(),
                session.sessionKey(),
                new SessionProtocolBuilder(Map.of("hop_height_mm", Trial::hopHeightMm)).of(session.session(), trials));
    }
}
