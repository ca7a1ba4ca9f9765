package org.tableweather.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;
import org.tableweather.schema.record.Shot;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The scatter to plan with, and what is worth finding: stated, from a pool, or assumed. */
final class PlanScatter {
    private static final String POOLED = "rebound-humidity";
    private static final double MOST = 1000;

    @Option(
            names = "--response",
            paramLabel = "NAME",
            defaultValue = "final_rebound_angle_deg",
            description =
                    "What is measured: final_rebound_angle_deg or landing_offset_dia;" + " standard: ${DEFAULT-VALUE}.")
    private String response;

    @Option(
            names = "--change",
            paramLabel = "X",
            description = "The change from the driest to the dampest climate that is worth finding;"
                    + " standard: 2 degrees or 0.5 diamonds.")
    private Double change;

    @Option(
            names = "--power",
            paramLabel = "P",
            defaultValue = "0.8",
            description = "The chance with which it should be found; standard: ${DEFAULT-VALUE}.")
    private double power;

    @Option(
            names = "--trial-sd",
            paramLabel = "X",
            description = "Standard deviation of attempts in one session, in the response's unit.")
    private Double trialSd;

    @Option(
            names = "--session-sd",
            paramLabel = "X",
            description = "Standard deviation of sessions of one room in one climate.")
    private Double sessionSd;

    @Option(
            names = "--room-slope-sd",
            paramLabel = "X",
            description = "Standard deviation of the rooms' slopes per 10 %%RH.")
    private Double roomSlopeSd;

    @Mixin
    private DataOrServer where;

    /** The responses that can be planned for. */
    private enum Unit {
        DEGREES("final_rebound_angle_deg", "degrees", 2, new ScatterAssumption(0.25, 0.5, 2)),
        DIAMONDS("landing_offset_dia", "diamonds", 0.5, new ScatterAssumption(0.06, 0.12, 0.5));

        private final String response;
        private final String words;
        private final double change;
        /** No source: figures of the right size, to begin with. */
        private final ScatterAssumption assumed;

        Unit(String response, String words, double change, ScatterAssumption assumed) {
            this.response = response;
            this.words = words;
            this.change = change;
            this.assumed = assumed;
        }
    }

    /**
     * What to plan with.
     *
     * @param shots to be planned
     * @param command to talk through
     * @throws Failure for a value that cannot be
     */
    PlanReport.Wanted stated(List<Shot> shots, Subcommand command) throws IOException {
        Unit unit = unit();
        double wanted = change == null ? unit.change : change;
        if (!(wanted != 0 && Math.abs(wanted) <= MOST)) {
            throw Failure.usage("--change " + wanted + " is 0 or beyond 1000", "say what is worth finding");
        }
        if (!(power >= 0.1 && power <= 0.999)) {
            throw Failure.usage("--power " + power + " is outside 0.1..0.999", "choose within; 0.8 is usual");
        }
        requireSd("--trial-sd", trialSd);
        requireSd("--session-sd", sessionSd);
        requireSd("--room-slope-sd", roomSlopeSd);
        Optional<ScatterAssumption> pooled = pooled(shots, unit, command);
        requireSome(chosen(sessionSd, pooled, unit, ScatterAssumption::sessionSd)
                + chosen(trialSd, pooled, unit, ScatterAssumption::trialSd));
        ScatterAssumption scatter = new ScatterAssumption(
                chosen(roomSlopeSd, pooled, unit, ScatterAssumption::roomSlopeSd),
                chosen(sessionSd, pooled, unit, ScatterAssumption::sessionSd),
                chosen(trialSd, pooled, unit, ScatterAssumption::trialSd));
        return new PlanReport.Wanted(
                response, unit.words, Math.abs(wanted), power, scatter, origin(pooled.isPresent()));
    }

    private static void requireSd(String option, Double sd) {
        if (sd != null && !(sd >= 0 && sd <= MOST)) {
            throw Failure.usage(option + " " + sd + " is outside 0..1000", "choose within, in the response's unit");
        }
    }

    private static void requireSome(double scatter) {
        if (scatter == 0) {
            throw Failure.usage(
                    "--session-sd 0 and --trial-sd 0: nothing scatters", "make at least one of them more than 0");
        }
    }

    private Unit unit() {
        for (Unit unit : Unit.values()) {
            if (unit.response.equals(response)) {
                return unit;
            }
        }
        throw Failure.usage(
                "--response " + response + " cannot be planned for",
                "choose final_rebound_angle_deg or landing_offset_dia");
    }

    private static double chosen(
            Double typed, Optional<ScatterAssumption> pooled, Unit unit, Function<ScatterAssumption, Double> part) {
        return typed != null ? typed : part.apply(pooled.orElse(unit.assumed));
    }

    private String origin(boolean pooled) {
        boolean all = trialSd != null && sessionSd != null && roomSlopeSd != null;
        if (all) {
            return "stated";
        }
        boolean some = trialSd != null || sessionSd != null || roomSlopeSd != null;
        String rest = pooled ? "estimated from the pool" : "ASSUMED, measured nowhere";
        return some ? "partly stated, the rest " + rest : rest;
    }

    /** The variance components of a pool, when one is named. */
    private Optional<ScatterAssumption> pooled(List<Shot> shots, Unit unit, Subcommand command) throws IOException {
        if (where.data().isEmpty() && !where.server().isTyped()) {
            return Optional.empty();
        }
        where.parameters().putIfAbsent("shot", shots.get(0).id());
        where.parameters().putIfAbsent("response", unit.response);
        AnalysisRun run = where.run(POOLED, command);
        return Optional.of(run.analysis().fold(PlanScatter::scatter, PlanScatter::none));
    }

    private static ScatterAssumption none(Analysis.Declined declined) {
        throw Failure.refused(
                "the pool does not tell the scatter: " + declined.detail(),
                "state it with --trial-sd, --session-sd and --room-slope-sd");
    }

    private static ScatterAssumption scatter(Analysis.Estimated answer) {
        return new ScatterAssumption(
                component(answer, "room.humidity"),
                component(answer, "session.intercept"),
                component(answer, "residual"));
    }

    private static double component(Analysis.Estimated answer, String name) {
        return answer.variance().stream()
                .filter(component -> component.name().equals(name))
                .map(VarianceComponent::sd)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .findFirst()
                .orElse(0);
    }
}
