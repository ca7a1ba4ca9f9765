package org.tableweather.analyzers.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Invented pairs of approach and rebound, of balls that roll at 30°, 45° and 60° and 1 and 2 m/s: restitution 0.82 less 0.008 for each
 * 10 %RH, friction 0.18 and 12 % more for each; rooms, sessions and attempts scatter.
 *
 * @param rooms how many
 * @param sessions in each room
 * @param pairs in each session
 */
record HeldPairs(int rooms, int sessions, int pairs) {

    private static final double[] ANGLES_DEG = {30, 45, 60};
    private static final double[] SPEEDS_MPS = {1, 2};

    <S> List<SessionSummary<S>> summaries(Analyzer<S> analyzer, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<SessionSummary<S>> summaries = new ArrayList<>(rooms * sessions);
        for (int room = 0; room < rooms; room++) {
            double[] own = {random.nextGaussian(0, 0.02), random.nextGaussian(0, 0.15), random.nextGaussian(0, 0.03)};
            for (int session = 0; session < sessions; session++) {
                SessionRecord whole = HeldSummaries.session(room, session);
                summaries.add(new SessionSummary<>(
                        whole.roomKey(),
                        whole.sessionKey(),
                        whole.digest(),
                        true,
                        pairs,
                        analyzer.summarise(whole, trials(whole.session().id(), own, random))));
            }
        }
        return summaries;
    }

    private List<Trial> trials(String session, double[] own, SplittableRandom random) {
        double rhPct = 30 + 40 * random.nextDouble();
        double tempC = 18 + 7 * random.nextDouble();
        double x = (rhPct - 50) / 10;
        double e = 0.82 - 0.008 * x + own[0] + random.nextGaussian(0, 0.005);
        double grip =
                Math.log(0.18) + (0.12 + own[2]) * x - 0.04 * (tempC - 21) / 5 + own[1] + random.nextGaussian(0, 0.04);
        Climate climate = new Climate(tempC, rhPct, ClimateSource.SPOT);
        List<Trial> trials = new ArrayList<>(pairs);
        for (int i = 0; i < pairs; i++) {
            double angle = ANGLES_DEG[i % ANGLES_DEG.length];
            double speed = SPEEDS_MPS[i / ANGLES_DEG.length % SPEEDS_MPS.length];
            trials.add(trial(session, i + 1, angle, speed, e, Math.exp(grip), climate, random));
        }
        return trials;
    }

    private static Trial trial(
            String session,
            int number,
            double angle,
            double speed,
            double e,
            double friction,
            Climate climate,
            SplittableRandom random) {
        double approach = angle + random.nextGaussian(0, 0.5);
        double along = speed * Math.sin(Math.toRadians(approach));
        double across = speed * Math.cos(Math.toRadians(approach));
        RailProperties rail = new RailProperties(
                RestitutionLaw.constant(e - 0.03 * (across - 1)), friction, RailProperties.POOL_NOSE_SINE, 0);
        RailMotion off = new ClosedFormImpact(rail).after(RailMotion.rolling(along, across, 0));
        return pair(
                session,
                number,
                new double[] {
                    approach,
                    speed,
                    off.angleDeg() + random.nextGaussian(0, 0.8),
                    off.speedMps() + speed * random.nextGaussian(0, 0.012)
                },
                climate);
    }

    /** Angle and speed of approach, angle and speed of rebound. */
    private static Trial pair(String session, int number, double[] pair, Climate climate) {
        double none = Double.NaN;
        return new Trial(
                session,
                Integer.toString(number),
                Optional.empty(),
                Kind.REBOUND,
                "rebound-45-cue",
                "",
                climate.tempC(),
                climate.rhPct(),
                pair[0],
                pair[1],
                none,
                none,
                none,
                pair[2],
                pair[3],
                none,
                none,
                Made.NOT_STATED,
                1,
                none,
                none,
                none,
                none,
                none,
                -1,
                none,
                none,
                "",
                climate);
    }
}
