package org.tableweather.cli;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.climate.Settling;
import org.tableweather.analyzers.standard.plan.ClimateStep;
import org.tableweather.analyzers.standard.plan.ClimateStep.TimeConstant;
import org.tableweather.analyzers.standard.plan.PlanChance;
import org.tableweather.analyzers.standard.plan.PlanSimulation;
import org.tableweather.analyzers.standard.plan.PlannedSession;
import org.tableweather.analyzers.standard.plan.RunOrder;
import org.tableweather.analyzers.standard.plan.StudyPlan;
import org.tableweather.analyzers.standard.statistics.power.RoomClaim;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;
import org.tableweather.schema.caution.Caution;
import org.tableweather.schema.caution.Cautions;

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

    /**
     * When it is held.
     *
     * @param first when the first climate begins to be held
     * @param stated whether the user said so, or it is an example
     * @param settleHours how long a climate is held before the first attempt
     * @param cloth how fast it follows, where that is known
     */
    record Times(OffsetDateTime first, boolean stated, double settleHours, Optional<TimeConstant> cloth) {}

    /**
     * One session with its times.
     *
     * @param session what is shot in which climate
     * @param day from 1, counted from the first session's
     * @param settledFrom when the climate begins to be held
     * @param startedAt first attempt
     * @param step from the climate before; empty for the first session
     * @param isShort whether the plan holds the climate for less than the cloth needs, its error included
     */
    record Held(
            PlannedSession session,
            long day,
            OffsetDateTime settledFrom,
            OffsetDateTime startedAt,
            Optional<ClimateStep> step,
            boolean isShort) {}

    /**
     * How far the cloth has followed when a session starts.
     *
     * @param hours held before the first attempt
     * @param datesStated whether the dates are the user's, or examples
     * @param cloth its time constant; empty when none is known
     * @param shareDone of a step, 0 to 1; empty when no time constant is known
     */
    record SettlingTime(double hours, boolean datesStated, Optional<TimeConstant> cloth, Optional<Double> shareDone) {}

    /** A caution and the climate that calls for it. */
    record HeldCaution(double rhPct, Caution caution) {}

    static PlanReport of(StudyPlan plan, int room, long seed, Times times, Wanted wanted, PlanCircuit circuit) {
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
        List<Held> sessions = timed(plan, RunOrder.of(plan, room, seed), times);
        return new PlanReport(
                plan,
                wanted,
                chances,
                simulated,
                room,
                seed,
                sessions,
                settling(times),
                cautions(plan, held(plan, times), circuit),
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
    private static List<Held> timed(StudyPlan plan, List<PlannedSession> order, Times times) {
        List<Held> sessions = new ArrayList<>();
        long everyDays = Math.max(1, held(plan, times).plusHours(23).toDays());
        Optional<PlannedSession> before = Optional.empty();
        for (PlannedSession session : order) {
            OffsetDateTime from = times.first().plusDays(everyDays * sessions.size());
            Optional<ClimateStep> step =
                    before.map(last -> ClimateStep.of(last.rhPct(), session.rhPct(), plan.tempC(), times.cloth()));
            boolean isShort = step.flatMap(ClimateStep::settling)
                    .map(lag -> lag.atMostHours() > times.settleHours())
                    .orElse(false);
            sessions.add(
                    new Held(session, 1 + everyDays * sessions.size(), from, from.plus(settle(times)), step, isShort));
            before = Optional.of(session);
        }
        return sessions;
    }

    private static SettlingTime settling(Times times) {
        return new SettlingTime(
                times.settleHours(),
                times.stated(),
                times.cloth(),
                times.cloth().map(cloth -> new Settling(cloth.hours()).fractionAfter(times.settleHours())));
    }

    private static List<HeldCaution> cautions(StudyPlan plan, Duration held, PlanCircuit circuit) {
        List<HeldCaution> found = new ArrayList<>();
        for (double rhPct : plan.rhPct()) {
            Cautions.of(circuit.held(plan.tempC(), rhPct, held))
                    .forEach(caution -> found.add(new HeldCaution(rhPct, caution)));
        }
        return found;
    }
}
