package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Trials from a stated truth, drawn from a seed: angle 32 − 0.8 h + 0.05 h² + 0.1 t, standard deviations room 1, room
 * slope 0.25, session 0.5, trial 2.
 */
final class InventedLeague {

    static final double SLOPE = -0.8;

    private InventedLeague() {}

    /** One session's trials, with the keys that a host would give. */
    record Held(String room, String session, List<Trial> trials) {}

    static List<Held> drawn(int rooms, int sessions, int trials, long seed) {
        Random random = new Random(seed);
        List<Held> league = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double intercept = random.nextGaussian();
            double slope = 0.25 * random.nextGaussian();
            for (int session = 0; session < sessions; session++) {
                String key = String.format(Locale.ROOT, "league/room-%03d", room);
                league.add(session(key, key + "/s" + session, trials, intercept, slope, random));
            }
        }
        return league;
    }

    private static Held session(
            String room, String session, int trials, double intercept, double slope, Random random) {
        double rhPct = 32 + 36 * random.nextDouble();
        double tempC = 18 + 7 * random.nextDouble();
        double shift = 0.5 * random.nextGaussian();
        List<Trial> drawn = new ArrayList<>();
        for (int trial = 1; trial <= trials; trial++) {
            double rh = rhPct + 0.4 * random.nextGaussian();
            double temp = tempC + 0.1 * random.nextGaussian();
            double h = (rh - 50) / 10;
            double angle = 32
                    + intercept
                    + shift
                    + (SLOPE + slope) * h
                    + 0.05 * h * h
                    + 0.1 * (temp - 21) / 5
                    + 2 * random.nextGaussian();
            drawn.add(new TrialDraft(session, trial)
                    .climate(temp, rh)
                    .angle(angle)
                    .landing(angle / 10)
                    .approach(45 + random.nextGaussian(), 2.4 + 0.1 * random.nextGaussian())
                    .reboundSpeed(1.5 + 0.1 * random.nextGaussian())
                    .build());
        }
        return new Held(room, session, drawn);
    }

    static SummarySource<SessionMoments> summarised(List<Held> league) {
        ReboundHumidity analyzer = new ReboundHumidity();
        List<SessionSummary<SessionMoments>> summaries = new ArrayList<>();
        for (Held held : league) {
            SessionMoments moments = analyzer.summarise(record(held), held.trials());
            summaries.add(new SessionSummary<>(
                    held.room(),
                    held.session(),
                    held.session(),
                    true,
                    held.trials().size(),
                    moments));
        }
        return source(summaries);
    }

    static SummarySource<SessionMoments> source(List<SessionSummary<SessionMoments>> summaries) {
        return new SummarySource<>() {
            @Override
            public List<SessionSummary<SessionMoments>> sessions() {
                return Collections.unmodifiableList(summaries);
            }

            @Override
            public String hash() {
                return "sha256:" + summaries.size();
            }
        };
    }

    static Analysis analysed(List<Held> league, Map<String, String> set) {
        ReboundHumidity analyzer = new ReboundHumidity();
        return analyzer.conclude(summarised(league), Parameters.of(analyzer.info(), set));
    }

    static SessionRecord record(Held held) {
        Room room = new Room(
                held.room(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
        PoolTable table = new PoolTable(
                "t",
                held.room(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return new SessionRecord(
                held.room(),
                held.session(),
                held.session(),
                true,
                room,
                table,
                session(held.session()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Session session(String id) {
        return new Session(
                id,
                "t",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }
}
