package org.tableweather.cli;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.climate.Settling;
import org.tableweather.analyzers.standard.plan.PlanChance;
import org.tableweather.analyzers.standard.plan.PlanSimulation;
import org.tableweather.analyzers.standard.plan.PlannedSession;
import org.tableweather.analyzers.standard.plan.RunOrder;
import org.tableweather.analyzers.standard.plan.StudyPlan;
import org.tableweather.analyzers.standard.statistics.power.RoomClaim;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;
import org.tableweather.schema.caution.Caution;
import org.tableweather.schema.caution.Cautions;
import org.tableweather.schema.caution.Circuit;
import org.tableweather.schema.caution.HeldClimate;
import org.tableweather.schema.climate.MoistAir;

/**
 * A plan with all that follows from it.
 *
 * @param plan what is to be done
 * @param wanted what is to be found, and the scatter to find it in
 * @param chances for rooms in general, where there are at least two, and for these rooms
 * @param simulated the chance of each of these, counted in simulated studies
 * @param room which room the run order is for
 * @param seed that it was drawn with
 * @param sessions in the order in which they are held
 * @param settling what is known of it
 * @param cautions for the climates of the plan
 * @param references keys of the bibliography
 */
record PlanReport(
        StudyPlan plan,
        Wanted wanted,
        List<PlanChance> chances,
        List<PlanSimulation> simulated,
        int room,
        long seed,
        List<Held> sessions,
        SettlingTime settling,
        List<HeldCaution> cautions,
        List<String> references) {

    private static final int REPLICATES = 4000;
    /** A step is taken as done when so much of it is (common practice, no source). */
    private static final double SETTLED = 0.95;

    /**
     * What is to be found.
     *
     * @param response its name
     * @param unit in words
     * @param change from the driest climate to the dampest
     * @param power the chance wanted
     * @param scatter to find it in, the room slope's per 10 %RH
     * @param scatterFrom where it comes from, in words
     */
    record Wanted(
            String response, String unit, double change, double power, ScatterAssumption scatter, String scatterFrom) {}

    /** When it begins, how long a climate is held first, and how fast the cloth follows, where that is known. */
    record Times(OffsetDateTime first, double settleHours, Optional<Double> timeConstantHours) {}

    /** One session with its times. */
    record Held(PlannedSession session, OffsetDateTime settledFrom, OffsetDateTime startedAt) {}

    /**
     * How far the cloth has followed when a session starts.
     *
     * @param hours held before the first attempt
     * @param shareDone of a step, 0 to 1; empty when no time constant is known
     * @param hoursTo95Pct of a step; empty when no time constant is known
     */
    record SettlingTime(double hours, Optional<Double> shareDone, Optional<Double> hoursTo95Pct) {}

    /** A caution and the climate that calls for it. */
    record HeldCaution(double rhPct, Caution caution) {}

    static PlanReport of(StudyPlan plan, int room, long seed, Times times, Wanted wanted, List<Circuit> circuits) {
        List<PlanChance> chances = new ArrayList<>();
        List<PlanSimulation> simulated = new ArrayList<>();
        for (RoomClaim claim : RoomClaim.values()) {
            PlanChance.of(plan, wanted.scatter(), wanted.change(), wanted.power(), claim)
                    .ifPresent(chance -> {
                        chances.add(chance);
                        simulated.add(PlanSimulation.of(
                                plan, wanted.scatter(), wanted.change(), claim, replicates(plan), seed));
                    });
        }
        List<Held> sessions = timed(RunOrder.of(plan, room, seed), times);
        return new PlanReport(
                plan,
                wanted,
                chances,
                simulated,
                room,
                seed,
                sessions,
                settling(times),
                cautions(plan, held(plan, times), circuits),
                List.of("Kirk2013", "Lenth1989", "Benton2003"));
    }

    /** Fewer for large plans, so that nobody waits. */
    private static int replicates(StudyPlan plan) {
        long sessions = (long) plan.rooms() * plan.sessionsPerRoom();
        return (int) Math.max(200, Math.min(REPLICATES, 20_000_000 / sessions));
    }

    private static Duration shooting(StudyPlan plan) {
        return ExampleRows.BETWEEN_ATTEMPTS.multipliedBy(plan.attemptsPerSession());
    }

    private static Duration settle(Times times) {
        return Duration.ofMinutes(Math.round(60 * times.settleHours()));
    }

    private static Duration held(StudyPlan plan, Times times) {
        return settle(times).plus(shooting(plan));
    }

    /** A session a day, or as many days as it takes to hold its climate. */
    private static List<Held> timed(List<PlannedSession> order, Times times) {
        List<Held> sessions = new ArrayList<>();
        OffsetDateTime from = times.first();
        for (PlannedSession session : order) {
            OffsetDateTime start = from.plus(settle(times));
            sessions.add(new Held(session, from, start));
            OffsetDateTime end = start.plus(
                    ExampleRows.BETWEEN_ATTEMPTS.multipliedBy(session.shots().size()));
            long days = Math.max(1, Duration.between(from, end).plusHours(23).toDays());
            from = from.plusDays(days);
        }
        return sessions;
    }

    private static SettlingTime settling(Times times) {
        Optional<Settling> known = times.timeConstantHours().map(Settling::new);
        return new SettlingTime(
                times.settleHours(),
                known.map(settling -> settling.fractionAfter(times.settleHours())),
                known.map(settling -> settling.hoursToFraction(SETTLED)));
    }

    private static List<HeldCaution> cautions(StudyPlan plan, Duration held, List<Circuit> circuits) {
        List<HeldCaution> found = new ArrayList<>();
        for (double rhPct : plan.rhPct()) {
            HeldClimate climate = HeldClimate.of(MoistAir.of(plan.tempC(), rhPct), held)
                    .with(circuits)
                    .with(HeldClimate.Attendance.ATTENDED);
            Cautions.of(climate).forEach(caution -> found.add(new HeldCaution(rhPct, caution)));
        }
        return found;
    }
}
