package org.tableweather.cli;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;

/** Rows that show how a folder is filled in; every one says that it is an example. All figures are invented. */
final class ExampleRows {
    /** In the note of every example row. */
    static final String NOTE = "EXAMPLE: replace this row";

    /** Placement of every example reading. */
    static final String PLACEMENT = "example";

    private static final double EXAMPLE_C = 21;
    static final Duration BETWEEN_ATTEMPTS = Duration.ofSeconds(90);
    private static final Duration BETWEEN_READINGS = Duration.ofMinutes(30);
    private static final List<Double> OFFSETS_DIA = List.of(0.1, -0.25, 0.0, 0.4, -0.1);

    private ExampleRows() {}

    /** The attempts of one session. */
    static void writeTrials(ContributionWriter writer, Session session, Shot shot, int attempts) throws IOException {
        for (int i = 0; i < attempts; i++) {
            writer.write(trial(session, shot, i, i));
        }
    }

    /**
     * One attempt.
     *
     * @param i its number in the session, from 0
     * @param ofShot its number among those of this shot, from 0
     */
    static Trial trial(Session session, Shot shot, int i, int ofShot) {
        Instant time = session.startedAt()
                .orElseThrow()
                .plus(BETWEEN_ATTEMPTS.multipliedBy(i))
                .toInstant();
        double none = Double.NaN;
        boolean oneRail = shot.kind() == Kind.REBOUND;
        boolean overRails = shot.kind() == Kind.BANK || shot.kind() == Kind.KICK;
        double offsetDia = offsetDia(session, ofShot);
        double approachDeg = shot.approachAngleDeg().orElse(45);
        double angleDeg = rounded(approachDeg - 3 + 4 * offsetDia);
        double speedMps = shot.approachSpeedMps().orElse(2.5);
        return new Trial(
                session.id(),
                Integer.toString(i + 1),
                Optional.of(time),
                shot.kind(),
                shot.id(),
                "",
                none,
                none,
                oneRail ? approachDeg : none,
                oneRail ? speedMps : none,
                none,
                none,
                of(shot, Kind.DEFLECTION, 14),
                oneRail ? angleDeg : none,
                oneRail ? rounded(speedMps * 0.7) : none,
                overRails ? angleDeg : none,
                overRails ? offsetDia : none,
                overRails ? made(offsetDia) : Made.NOT_STATED,
                shot.rails().size(),
                of(shot, Kind.SPEED, 1.8 + offsetDia),
                none,
                of(shot, Kind.THROW, 3 + 2 * offsetDia),
                of(shot, Kind.DEFLECTION, 2 + offsetDia),
                of(shot, Kind.HOP, 25 + 5 * offsetDia),
                shot.kind() == Kind.BREAK ? i % 3 : -1,
                of(shot, Kind.BREAK, 220 + 40 * offsetDia),
                none,
                NOTE,
                Climate.NONE);
    }

    /** Two sessions with the same outcomes would be taken for a copy: each begins elsewhere, and steps otherwise. */
    private static double offsetDia(Session session, int i) {
        int n = OFFSETS_DIA.size();
        int number = Math.floorMod(session.id().hashCode(), n * (n - 1));
        return OFFSETS_DIA.get((i * (1 + number / n) + number) % n);
    }

    /** An outcome of one kind of shot alone. */
    private static double of(Shot shot, Kind kind, double figure) {
        return shot.kind() == kind ? rounded(figure) : Double.NaN;
    }

    private static double rounded(double figure) {
        return Math.rint(figure * 10) / 10;
    }

    private static Made made(double offsetDia) {
        return Math.abs(offsetDia) < 0.2 ? Made.YES : Made.NO;
    }

    /** The readings of one session. */
    static void writeClimate(ContributionWriter writer, Session session, int attempts, double rhPct)
            throws IOException {
        writeClimate(writer, session, attempts, EXAMPLE_C, rhPct);
    }

    /** The readings of one session in which this climate is to be held. */
    static void writeClimate(ContributionWriter writer, Session session, int attempts, double tempC, double rhPct)
            throws IOException {
        Instant from = session.settledFrom().orElseThrow().toInstant();
        Instant until = session.startedAt()
                .orElseThrow()
                .toInstant()
                .plus(BETWEEN_ATTEMPTS.multipliedBy(attempts))
                .plus(BETWEEN_READINGS);
        for (Instant time = from; !time.isAfter(until); time = time.plus(BETWEEN_READINGS)) {
            writer.write(
                    new ClimateReading(session.instrument().orElseThrow(), time, tempC, rhPct, Double.NaN, PLACEMENT));
        }
    }
}
