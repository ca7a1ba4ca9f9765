package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Contributor;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/**
 * A large invented pool in one contribution folder, for benchmarks only: rooms of several sessions, each trial with its
 * own spot reading.
 *
 * @param rooms how many rooms
 * @param sessionsPerRoom sessions in each
 * @param trialsPerSession attempts in each
 * @param seed equal seeds give equal folders
 */
record InventedPool(int rooms, int sessionsPerRoom, int trialsPerSession, long seed) {
    static final String SHOT = "kick-3-rail";

    private static final OffsetDateTime FIRST_DAY = OffsetDateTime.of(2026, 1, 5, 10, 0, 0, 0, ZoneOffset.UTC);

    void write(Path folder) throws IOException {
        try (ContributionWriter writer = ContributionWriter.into(folder, contribution())) {
            SplittableRandom random = new SplittableRandom(seed);
            for (int room = 0; room < rooms; room++) {
                double intercept = random.nextGaussian(0, 1);
                double slope = random.nextGaussian(0, 0.25);
                for (int session = 0; session < sessionsPerRoom; session++) {
                    writeSession(writer, SHOT, room, session, intercept, slope, random);
                }
            }
        }
    }

    private void writeSession(
            ContributionWriter writer,
            String shot,
            int room,
            int session,
            double intercept,
            double slope,
            SplittableRandom random)
            throws IOException {
        double rhPct = 32 + 36.0 * random.nextDouble();
        double tempC = 18 + 7 * random.nextDouble();
        double sessionShift = random.nextGaussian(0, 0.5);
        OffsetDateTime start = startOf(room, session);
        for (int trial = 1; trial <= trialsPerSession; trial++) {
            double rh = round(rhPct + random.nextGaussian(0, 0.4), 1);
            double temp = round(tempC + random.nextGaussian(0, 0.1), 1);
            double h = (rh - 50) / 10;
            double angle = 32 + intercept + sessionShift + (slope - 0.8) * h + 0.05 * h * h + 0.1 * (temp - 21) / 5;
            writer.write(trial(
                    shot,
                    id(room, session),
                    trial,
                    start.plusSeconds(30L * trial),
                    temp,
                    rh,
                    round(random.nextGaussian(41, 0.8), 2),
                    round(random.nextGaussian(2.4, 0.1), 3),
                    round(angle + random.nextGaussian(0, 2), 2),
                    round(random.nextGaussian(0, 0.3), 3),
                    random.nextDouble() < 0.4));
        }
    }

    static Trial trial(
            String shot,
            String session,
            int trial,
            OffsetDateTime at,
            double tempC,
            double rhPct,
            double approachAngleDeg,
            double approachSpeedMps,
            double finalAngleDeg,
            double landingDia,
            boolean made) {
        double none = Double.NaN;
        return new Trial(
                session,
                Integer.toString(trial),
                Optional.of(at.toInstant()),
                Kind.KICK,
                shot,
                "",
                tempC,
                rhPct,
                approachAngleDeg,
                approachSpeedMps,
                none,
                none,
                none,
                none,
                none,
                finalAngleDeg,
                landingDia,
                made ? Made.YES : Made.NO,
                3,
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

    private Contribution contribution() {
        List<Room> roomList = new ArrayList<>();
        List<PoolTable> tables = new ArrayList<>();
        List<Session> sessions = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            roomList.add(room(room));
            tables.add(table(room));
            for (int session = 0; session < sessionsPerRoom; session++) {
                sessions.add(session(room, session));
            }
        }
        return new Contribution(
                "1.0",
                Optional.of("Invented pool for benchmarks"),
                "CC0-1.0",
                Optional.of(true),
                new Contributor("Invented Pool " + seed, Optional.empty(), Optional.empty()),
                roomList,
                tables,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                sessions);
    }

    static Room room(int room) {
        OptionalDouble unknown = OptionalDouble.empty();
        return new Room(name(room), Optional.empty(), Optional.empty(), unknown, unknown, unknown, List.of());
    }

    static PoolTable table(int room) {
        return new PoolTable(
                name(room) + "-t",
                name(room),
                OptionalDouble.of(2540),
                OptionalDouble.of(1270),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    static Session session(int room, int session) {
        OffsetDateTime start = startOf(room, session);
        return new Session(
                id(room, session),
                name(room) + "-t",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(start),
                Optional.of(start.minusHours(6)),
                Optional.of("cue"),
                Optional.of(true),
                Optional.of(true),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static OffsetDateTime startOf(int room, int session) {
        return FIRST_DAY.plusDays(session).plusMinutes(room);
    }

    private static String name(int room) {
        return String.format(Locale.ROOT, "r%04d", room);
    }

    private static String id(int room, int session) {
        return name(room) + String.format(Locale.ROOT, "-s%03d", session);
    }

    private static double round(double value, int digits) {
        double scale = Math.pow(10, digits);
        return Math.rint(value * scale) / scale;
    }
}
