package org.tableweather.cli.demo;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;

/** One held climate in one room, and the attempts in it. */
final class InventedSession {
    private static final LocalDate FIRST_DAY = LocalDate.of(2025, 1, 6);
    private static final LocalTime HELD_FROM = LocalTime.of(12, 0);
    private static final int SETTLING_SECONDS = 5 * 3600;
    private static final int READINGS = 96;
    private static final int SECONDS_BETWEEN_ATTEMPTS = 80;
    private static final int POOLED_ATTEMPTS = 20;
    private static final int REBOUND_ATTEMPTS = 6;
    private static final int PATH_ATTEMPTS = 6;
    private static final int SECONDS_TO_PATH = 35;
    private static final double APPROACH_SD_DEG = 0.5;
    private static final double DIAMONDS_PER_DEG = 0.17;
    private static final double LANDING_SD_DIA = 0.08;
    private static final double MADE_WITHIN_DIA = 0.25;

    private final String id;
    private final OffsetDateTime heldFrom;
    private final HeldClimate climate;
    private final SeededDraws draws;

    private InventedSession(String id, OffsetDateTime heldFrom, HeldClimate climate, SeededDraws draws) {
        this.id = id;
        this.heldFrom = heldFrom;
        this.climate = climate;
        this.draws = draws;
    }

    static InventedSession draw(InventedRoom room, int roomNumber, int visit, double rhTargetPct, SeededDraws draws) {
        OffsetDateTime heldFrom =
                FIRST_DAY.plusDays(roomNumber + 14L * visit).atTime(HELD_FROM).atOffset(ZoneOffset.UTC);
        HeldClimate climate = HeldClimate.draw(
                draws, heldFrom.toInstant(), READINGS, rhTargetPct + draws.uniform(-3, 3), draws.uniform(18, 25));
        return new InventedSession(room.tree() + "-" + (visit + 1), heldFrom, climate, draws);
    }

    /** What {@code contribution.json} says of it. */
    Session entry() {
        return new Session(
                id,
                InventedRoom.TABLE,
                Optional.of(InventedRoom.BALLS),
                Optional.empty(),
                Optional.of(InventedRoom.LOGGER),
                Optional.of(heldFrom.toLocalDate().toString()),
                Optional.of("invented-shooter"),
                Optional.of(heldFrom.plusSeconds(SETTLING_SECONDS)),
                Optional.of(heldFrom),
                Optional.of("cue"),
                Optional.of(true),
                Optional.of(true),
                Optional.of(true),
                OptionalInt.of(10),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of("invented"));
    }

    void writeClimate(ContributionWriter writer, double rhOffsetPct, double tempOffsetK) throws IOException {
        for (int i = 0; i < READINGS; i++) {
            writer.write(new ClimateReading(
                    InventedRoom.LOGGER,
                    climate.timeOf(i),
                    InventedRoom.rounded(climate.tempC()[i] + tempOffsetK, 10),
                    InventedRoom.rounded(climate.rhPct()[i] + rhOffsetPct, 10),
                    Double.NaN,
                    "room"));
        }
    }

    void writeTrials(
            ContributionWriter writer,
            Truth truth,
            InventedLeague.RoomDeparture room,
            DemoShots shots,
            InventedRebounds rebounds,
            InventedPaths paths)
            throws IOException {
        List<Boolean> withPath = paths.places(POOLED_ATTEMPTS + REBOUND_ATTEMPTS, PATH_ATTEMPTS);
        double sessionDeg = draws.normal(truth.sessionSd());
        Instant time = heldFrom.plusSeconds(SETTLING_SECONDS).toInstant();
        int number = 1;
        int place = 0;
        for (Shot shot : order(shots)) {
            double rhPct = climate.rhPctAt(time);
            double departureDeg = room.deg(rhPct) + sessionDeg + draws.normal(truth.trialSd());
            double tempC = climate.tempCAt(time);
            String trial = Integer.toString(number++);
            writer.write(
                    shot == shots.pooled()
                            ? pooled(trial, time, shot, truth, truth.meanDeg(rhPct, tempC) + departureDeg)
                            : rebound(
                                    trial,
                                    time,
                                    shot,
                                    rebounds.draw(shot, rhPct, tempC, draws.normal(APPROACH_SD_DEG))));
            // between two of the others, so that these stay as they are
            if (withPath.get(place++)) {
                Instant between = time.plusSeconds(SECONDS_TO_PATH);
                writer.write(path(Integer.toString(number++), between, shots.path(), paths));
            }
            time = time.plusSeconds(SECONDS_BETWEEN_ATTEMPTS + (long) draws.uniform(-20, 20));
        }
    }

    private List<Shot> order(DemoShots shots) {
        List<Shot> all = new ArrayList<>(Collections.nCopies(POOLED_ATTEMPTS, shots.pooled()));
        all.addAll(Collections.nCopies(REBOUND_ATTEMPTS, shots.rebound()));
        return draws.shuffled(all);
    }

    private Trial pooled(String trial, Instant time, Shot shot, Truth truth, double angleDeg) {
        double offsetDia = (angleDeg - truth.interceptDeg()) * DIAMONDS_PER_DEG + draws.normal(LANDING_SD_DIA);
        Made made = Math.abs(offsetDia) <= MADE_WITHIN_DIA ? Made.YES : Made.NO;
        return row(
                trial,
                time,
                shot,
                InventedRebounds.Rebound.NONE,
                InventedRoom.rounded(angleDeg, 10),
                InventedRoom.rounded(offsetDia, 20),
                made,
                shot.rails().size());
    }

    private Trial path(String trial, Instant time, Shot shot, InventedPaths paths) {
        InventedPaths.Attempt attempt = paths.draw(shot, climate.rhPctAt(time), climate.tempCAt(time));
        double offsetDia = InventedRoom.rounded(attempt.landingOffsetDia(), 20);
        Made made = Math.abs(offsetDia) <= MADE_WITHIN_DIA ? Made.YES : Made.NO;
        return row(trial, time, shot, InventedRebounds.Rebound.NONE, Double.NaN, offsetDia, made, attempt.rails());
    }

    private Trial rebound(String trial, Instant time, Shot shot, InventedRebounds.Rebound rebound) {
        return row(trial, time, shot, rebound, Double.NaN, Double.NaN, Made.NOT_STATED, 1);
    }

    private Trial row(
            String trial,
            Instant time,
            Shot shot,
            InventedRebounds.Rebound rebound,
            double finalReboundDeg,
            double landingOffsetDia,
            Made made,
            int rails) {
        double none = Double.NaN;
        return new Trial(
                id,
                trial,
                Optional.of(time),
                shot.kind(),
                shot.id(),
                "",
                none,
                none,
                rebound.approachDeg(),
                rebound.approachMps(),
                none,
                none,
                none,
                rebound.reboundDeg(),
                rebound.reboundMps(),
                finalReboundDeg,
                landingOffsetDia,
                made,
                rails,
                none,
                none,
                none,
                none,
                none,
                -1,
                none,
                none,
                "",
                Climate.NONE);
    }
}
