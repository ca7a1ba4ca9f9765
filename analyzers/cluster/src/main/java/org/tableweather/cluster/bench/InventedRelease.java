package org.tableweather.cluster.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleasedContribution;
import org.tableweather.schema.folder.SessionDigest;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * A release made up at any size, without contributions on the way: a kick over three rails, every trial with its own spot
 * reading. Equal values give equal bytes.
 *
 * @param rooms how many
 * @param sessionsPerRoom sessions in each
 * @param trialsPerSession attempts in each
 * @param seed of all that is drawn
 */
public record InventedRelease(int rooms, int sessionsPerRoom, int trialsPerSession, long seed) implements ReleaseInput {
    private static final String CONTRIBUTION = "invented";
    private static final OffsetDateTime FIRST_DAY = OffsetDateTime.of(2026, 1, 5, 10, 0, 0, 0, ZoneOffset.UTC);

    /**
     * Writes one: {@code FOLDER ROOMS SESSIONS_PER_ROOM TRIALS_PER_SESSION [TRIALS_PER_GROUP]}.
     *
     * @throws IOException when it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        InventedRelease invented = new InventedRelease(
                Integer.parseInt(arguments[1]), Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]), 1);
        long perGroup = arguments.length > 4 ? Long.parseLong(arguments[4]) : 1_000_000;
        Manifest manifest = invented.write(Path.of(arguments[0]), perGroup);
        long bytes =
                manifest.files().stream().mapToLong(Manifest.FileEntry::bytes).sum();
        System.out.printf(
                Locale.ROOT,
                "%,d trials of %,d sessions of %,d rooms: %,d bytes, %.1f a trial%n",
                manifest.totals().trials(),
                manifest.totals().sessions(),
                manifest.totals().rooms(),
                bytes,
                (double) bytes / manifest.totals().trials());
    }

    /**
     * Writes the release.
     *
     * @param folder that does not exist yet
     * @param trialsPerGroup as in {@link ReleaseBuilder}
     * @throws IOException when it cannot be written
     */
    public Manifest write(Path folder, long trialsPerGroup) throws IOException {
        ReleaseFacts facts = new ReleaseFacts(
                1, "Invented for tests and benchmarks", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
        return ReleaseBuilder.build(this, facts, trialsPerGroup, folder);
    }

    @Override
    public void read(Sink sink) throws IOException {
        ReleasedContribution contribution = new ReleasedContribution(
                CONTRIBUTION,
                Optional.of("Invented for tests and benchmarks"),
                "CC0-1.0",
                "Invented Pool",
                Optional.empty(),
                true,
                "0".repeat(64),
                "{}");
        sink.contribution(contribution, Origin.NONE);
        SplittableRandom random = new SplittableRandom(seed);
        for (int room = 0; room < rooms; room++) {
            double intercept = random.nextGaussian(0, 1);
            double slope = random.nextGaussian(0, 0.25);
            for (int session = 0; session < sessionsPerRoom; session++) {
                List<Trial> trials = trials(id(room, session), startOf(room, session), intercept, slope, random);
                sink.session(CONTRIBUTION, record(room, session, trials), trials);
            }
        }
    }

    private static SessionRecord record(int room, int session, List<Trial> trials) {
        SessionRecord open = record(room, session, "");
        return record(room, session, SessionDigest.of(open, trials));
    }

    private static SessionRecord record(int room, int session, String digest) {
        String roomKey = "invented-pool/" + name(room);
        return new SessionRecord(
                roomKey,
                roomKey + "/" + id(room, session),
                digest,
                true,
                room(room),
                table(room),
                session(room, session),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private List<Trial> trials(
            String session, OffsetDateTime start, double intercept, double slope, SplittableRandom random) {
        double rhPct = 32 + 36.0 * random.nextDouble();
        double tempC = 18 + 7 * random.nextDouble();
        double shift = random.nextGaussian(0, 0.5);
        List<Trial> trials = new ArrayList<>(trialsPerSession);
        for (int number = 1; number <= trialsPerSession; number++) {
            double rh = round(rhPct + random.nextGaussian(0, 0.4), 1);
            double temp = round(tempC + random.nextGaussian(0, 0.1), 1);
            double h = (rh - 50) / 10;
            double angle = 32 + intercept + shift + (slope - 0.8) * h + 0.05 * h * h + 0.1 * (temp - 21) / 5;
            trials.add(trial(session, number, start.plusSeconds(30L * number), temp, rh, angle, random));
        }
        return trials;
    }

    private static Trial trial(
            String session,
            int number,
            OffsetDateTime at,
            double tempC,
            double rhPct,
            double angleDeg,
            SplittableRandom random) {
        double none = Double.NaN;
        return new Trial(
                session,
                Integer.toString(number),
                Optional.of(at.toInstant()),
                Kind.KICK,
                "kick-3-rail",
                "",
                tempC,
                rhPct,
                round(random.nextGaussian(41, 0.8), 2),
                round(random.nextGaussian(2.4, 0.1), 3),
                none,
                none,
                none,
                none,
                none,
                round(angleDeg + random.nextGaussian(0, 2), 2),
                round(random.nextGaussian(0, 0.3), 3),
                random.nextDouble() < 0.4 ? Made.YES : Made.NO,
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
                new Climate(tempC, rhPct, ClimateSource.SPOT));
    }

    private static Room room(int room) {
        OptionalDouble unknown = OptionalDouble.empty();
        return new Room(name(room), Optional.empty(), Optional.empty(), unknown, unknown, unknown, List.of());
    }

    private static PoolTable table(int room) {
        return new PoolTable(
                name(room) + "-t",
                name(room),
                OptionalDouble.of(2540),
                OptionalDouble.of(1270),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Session session(int room, int session) {
        OffsetDateTime start = startOf(room, session);
        OptionalDouble unknown = OptionalDouble.empty();
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
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                Optional.empty());
    }

    private static OffsetDateTime startOf(int room, int session) {
        return FIRST_DAY.plusDays(session).plusMinutes(room);
    }

    private static String name(int room) {
        return String.format(Locale.ROOT, "r%05d", room);
    }

    private static String id(int room, int session) {
        return name(room) + String.format(Locale.ROOT, "-s%03d", session);
    }

    private static double round(double value, int digits) {
        double scale = Math.pow(10, digits);
        return Math.rint(value * scale) / scale;
    }
}
