package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column;
import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailMotion;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.analyzers.standard.physics.SteppedImpact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * Sessions from a stated truth, drawn from a seed: restitution 0.82 at 1 m/s, −0.03 per m/s, −0.008 per 10 %RH; friction 0.18,
 * + 12 % per 10 %RH and −4 % per 5 K; rooms' standard deviations 0.02, 15 %, and 3 % of the slope of friction; sessions' 0.005 and 4 %;
 * attempts' 0.8° and 0.012. Only the ball library is shared with the fit.
 */
public final class RailLeague {

    public static final double RESTITUTION = 0.82;
    public static final double RESTITUTION_SPEED = -0.03;
    public static final double RESTITUTION_HUMIDITY = -0.008;
    public static final double FRICTION = 0.18;
    public static final double FRICTION_HUMIDITY = 0.12;
    public static final double FRICTION_TEMPERATURE = -0.04;

    private double[] anglesDeg = {30, 45, 60};
    private double[] speedsMps = {1, 2};
    private boolean withSpeeds = true;
    private boolean stepped;
    private boolean heldHumidity;

    public RailLeague angles(double... other) {
        anglesDeg = other;
        return this;
    }

    RailLeague withoutSpeeds() {
        withSpeeds = false;
        return this;
    }

    RailLeague stepped() {
        stepped = true;
        return this;
    }

    public RailLeague atOneHumidity() {
        heldHumidity = true;
        return this;
    }

    public List<Held> drawn(int rooms, int sessions, int repeats, long seed) {
        Random random = new Random(new SplittableRandom(seed).nextLong());
        List<Held> league = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double[] own = {0.02 * random.nextGaussian(), 0.15 * random.nextGaussian(), 0.03 * random.nextGaussian()};
            for (int session = 0; session < sessions; session++) {
                league.add(session("room-" + room, "s" + session, repeats, own, random));
            }
        }
        return league;
    }

    private Held session(String room, String session, int repeats, double[] own, Random random) {
        double rhPct = heldHumidity ? 50 : 30 + 40 * random.nextDouble();
        double tempC = 18 + 7 * random.nextDouble();
        double x = (rhPct - 50) / 10;
        double e = RESTITUTION + RESTITUTION_HUMIDITY * x + own[0] + 0.005 * random.nextGaussian();
        double grip = Math.log(FRICTION)
                + (FRICTION_HUMIDITY + own[2]) * x
                + FRICTION_TEMPERATURE * (tempC - 21) / 5
                + own[1]
                + 0.04 * random.nextGaussian();
        List<Trial> trials = new ArrayList<>();
        int number = 1;
        for (double angle : anglesDeg) {
            for (double speed : speedsMps) {
                for (int i = 0; i < repeats; i++) {
                    trials.add(trial(number++, angle, speed, e, Math.exp(grip), tempC, rhPct, random));
                }
            }
        }
        return new Held(
                new SessionDraft(room, session)
                        .table(2540, 1270)
                        .balls(57.15, 168)
                        .build(),
                trials);
    }

    private Trial trial(
            int number,
            double angle,
            double speed,
            double e,
            double friction,
            double tempC,
            double rhPct,
            Random random) {
        double approach = angle + 0.5 * random.nextGaussian();
        double across = speed * Math.cos(Math.toRadians(approach));
        RailProperties rail = new RailProperties(
                RestitutionLaw.constant(e + RESTITUTION_SPEED * (across - 1)),
                friction,
                RailProperties.POOL_NOSE_SINE,
                0.2);
        RailImpact impact = stepped ? new SteppedImpact(rail) : new ClosedFormImpact(rail);
        RailMotion after = impact.after(RailMotion.rolling(speed * Math.sin(Math.toRadians(approach)), across, 0));
        double rebound = Math.toDegrees(Math.atan2(after.alongMps(), -after.intoMps())) + 0.8 * random.nextGaussian();
        TrialDraft draft = new TrialDraft(Kind.REBOUND, number)
                .shot("rebound-" + Math.round(angle))
                .climate(tempC, rhPct)
                .with(Column.APPROACH_ANGLE_DEG, approach)
                .with(Column.REBOUND_ANGLE_DEG, rebound);
        if (withSpeeds) {
            double ratio = after.speedMps() / speed + 0.012 * random.nextGaussian();
            draft.with(Column.APPROACH_SPEED_MPS, speed).with(Column.REBOUND_SPEED_MPS, ratio * speed);
        }
        return draft.build();
    }
}
