package org.tableweather.release;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Contributor;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.shots.ShotCatalogue;

/** Invented contributions with everything that a release must keep: two kinds, gaps, uncertainties, notes, odd times. */
final class InventedFolders {
    static final int ROOMS = 3;
    static final int SESSIONS = 2;
    static final int TRIALS = 30;

    private InventedFolders() {}

    /**
     * Writes one contribution.
     *
     * @param folder of it
     * @param contributor by whose name the rooms are told apart
     * @param latitude of the rooms; exact or not
     */
    static Path write(Path folder, String contributor, double latitude) throws IOException {
        Contribution contribution = contribution(contributor, latitude);
        try (ContributionWriter writer = ContributionWriter.into(folder, contribution)) {
            SplittableRandom random = new SplittableRandom(contributor.hashCode());
            for (Session session : contribution.sessions()) {
                for (int trial = 1; trial <= TRIALS; trial++) {
                    writer.write(trial(session, trial, random));
                }
            }
        }
        return folder;
    }

    private static Contribution contribution(String contributor, double latitude) {
        List<Room> rooms = new ArrayList<>();
        List<PoolTable> tables = new ArrayList<>();
        List<Session> sessions = new ArrayList<>();
        for (int room = 1; room <= ROOMS; room++) {
            rooms.add(new Room(
                    "r" + room,
                    Optional.of("Room " + room + ", north"),
                    Optional.of("NO"),
                    OptionalDouble.of(latitude),
                    OptionalDouble.of(10.7),
                    OptionalDouble.of(90),
                    List.of("heating")));
            tables.add(new PoolTable(
                    "t" + room,
                    "r" + room,
                    OptionalDouble.of(2540),
                    OptionalDouble.of(1270),
                    Optional.empty(),
                    Optional.of(new Cloth(
                            OptionalDouble.of(85),
                            OptionalDouble.of(15),
                            OptionalDouble.empty(),
                            Optional.of("worsted"),
                            OptionalDouble.of(500),
                            Optional.of(LocalDate.of(2025, 3, 1)))),
                    Optional.empty()));
            for (int session = 1; session <= SESSIONS; session++) {
                sessions.add(session("s" + room + session, "t" + room, session));
            }
        }
        return new Contribution(
                "1.0",
                Optional.of("Invented for tests, \"" + contributor + "\""),
                "CC-BY-4.0",
                Optional.of(true),
                new Contributor(contributor, Optional.empty(), Optional.empty()),
                rooms,
                tables,
                List.of(),
                List.of(),
                List.of(),
                List.of(ownShot()),
                sessions);
    }

    /** A shot of the catalogue under a name of its own. */
    static Shot ownShot() {
        ObjectNode shot = ContributionJson.mapper()
                .valueToTree(ShotCatalogue.byId("kick-2-rail").orElseThrow());
        try {
            return ContributionJson.readShot(new ByteArrayInputStream(
                    shot.put("id", "own-kick").toString().getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Session session(String id, String table, int day) {
        return new Session(
                id,
                table,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("visit " + day),
                Optional.empty(),
                Optional.of(OffsetDateTime.parse("2026-01-1" + day + "T18:00:00+01:00")),
                Optional.of(OffsetDateTime.parse("2026-01-1" + day + "T08:00:00+01:00")),
                Optional.of("ramp"),
                Optional.of(true),
                Optional.of(true),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.of(21.25),
                OptionalDouble.empty(),
                OptionalDouble.of(30 + 10.0 * day),
                OptionalDouble.of(24.5),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static Trial trial(Session session, int number, SplittableRandom random) {
        boolean kick = number % 3 != 0;
        double none = Double.NaN;
        double angle = round(random.nextGaussian(32, 2));
        Instant start = session.startedAt()
                .orElseThrow()
                .toInstant()
                .plusSeconds(60L * number)
                .plusNanos(123_456_789);
        return new Trial(
                session.id(),
                Integer.toString(number),
                number % 5 == 0 ? Optional.empty() : Optional.of(start),
                kick ? Kind.KICK : Kind.REBOUND,
                kick ? "kick-3-rail" : number % 2 == 0 ? "rebound-30-ramp" : "rebound-45-ramp",
                number % 7 == 0 ? "cue ball 2" : "",
                none,
                none,
                kick ? none : 30,
                kick ? round(random.nextGaussian(2.4, 0.1)) : none,
                none,
                none,
                none,
                kick ? none : angle,
                none,
                kick ? angle : none,
                kick && number % 4 == 0 ? -0.25 : none,
                kick ? number % 2 == 0 ? Made.YES : Made.NO : Made.NOT_STATED,
                kick ? 3 : -1,
                none,
                none,
                none,
                none,
                none,
                -1,
                none,
                none,
                number == 8 ? "ball hopped; \"twice\", größer als sonst" : "",
                Climate.NONE,
                number == 4
                        ? new OutcomeUncertainty(
                                none, none, none, none, 0.25, none, none, none, none, none, none, none, none)
                        : OutcomeUncertainty.NONE);
    }

    private static double round(double value) {
        return Math.rint(value * 100) / 100;
    }
}
