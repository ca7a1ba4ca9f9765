package org.tableweather.cli.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Contributor;
import org.tableweather.schema.record.Cushion;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;

/**
 * A room of the invented league and its equipment. Rooms are named after trees; no such hall exists.
 *
 * @param tree its name
 * @param lengthMm playing length of its table, nose to nose, mm
 * @param woolPct wool in the cloth, %
 * @param ballSet what the balls are made of
 */
record InventedRoom(String tree, double lengthMm, double woolPct, String ballSet) {
    static final String TABLE = "t1";
    static final String BALLS = "b1";
    static final String LOGGER = "h1";
    private static final double NOSE_MM = 36.3;
    private static final double BALL_MM = 57.15;
    private static final LocalDate FITTED = LocalDate.of(2024, 9, 2);
    private static final LocalDate CALIBRATED = LocalDate.of(2024, 12, 20);

    /** All twelve. */
    static List<InventedRoom> league() {
        return List.of(
                new InventedRoom("alder", 2540, 85, "phenolic"),
                new InventedRoom("birch", 1981, 70, "polyester"),
                new InventedRoom("cedar", 2337, 85, "phenolic"),
                new InventedRoom("elm", 2540, 90, "phenolic"),
                new InventedRoom("fir", 1981, 75, "polyester"),
                new InventedRoom("hazel", 2540, 85, "phenolic"),
                new InventedRoom("juniper", 2337, 80, "phenolic"),
                new InventedRoom("larch", 2540, 90, "phenolic"),
                new InventedRoom("maple", 2337, 70, "polyester"),
                new InventedRoom("oak", 2540, 85, "phenolic"),
                new InventedRoom("rowan", 1981, 80, "phenolic"),
                new InventedRoom("willow", 2540, 75, "polyester"));
    }

    /**
     * What its contribution says.
     *
     * @param loggerRhOffsetPct by how much its logger reads too high, %RH
     * @param sessions the sessions
     */
    Contribution contribution(double loggerRhOffsetPct, List<Session> sessions) {
        return new Contribution(
                "1.0",
                Optional.of("INVENTED DATA: sessions of the invented room " + tree),
                "CC0-1.0",
                Optional.of(true),
                new Contributor("Invented room " + tree, Optional.empty(), Optional.of("Invented league")),
                List.of(room()),
                List.of(table()),
                List.of(balls()),
                List.of(),
                List.of(logger(loggerRhOffsetPct)),
                List.of(),
                sessions);
    }

    private Room room() {
        return new Room(
                tree,
                Optional.of("Invented room " + tree),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of("heating", "humidifier", "dehumidifier"));
    }

    private PoolTable table() {
        Cloth cloth = new Cloth(
                OptionalDouble.of(woolPct),
                OptionalDouble.of(100 - woolPct),
                OptionalDouble.empty(),
                Optional.of("worsted"),
                OptionalDouble.of(500),
                Optional.of(FITTED));
        Cushion cushion = new Cushion(Optional.of("natural"), Optional.of(FITTED), OptionalDouble.of(NOSE_MM));
        return new PoolTable(
                TABLE,
                tree,
                OptionalDouble.of(lengthMm),
                OptionalDouble.of(lengthMm / 2),
                Optional.of(false),
                Optional.of(cloth),
                Optional.of(cushion));
    }

    /** Table and ball. */
    TableSize size() {
        return new TableSize(lengthMm / 1000, lengthMm / 2000, BALL_MM / 1000);
    }

    /** How the nose meets the ball. */
    static double noseSine() {
        return RailProperties.noseSine(NOSE_MM, BALL_MM);
    }

    private BallSet balls() {
        return new BallSet(
                BALLS,
                Optional.of(ballSet),
                OptionalDouble.of(BALL_MM),
                OptionalDouble.of(167),
                Optional.of(FITTED),
                Optional.of(CALIBRATED));
    }

    private static Instrument logger(double rhOffsetPct) {
        Calibration salt = new Calibration(
                CALIBRATED,
                "humidity",
                Optional.of("saturated-salt"),
                Optional.of("NaCl"),
                75.4,
                rounded(75.4 + rhOffsetPct, 10),
                OptionalDouble.of(0.5));
        return new Instrument(
                LOGGER,
                Optional.of("invented logger"),
                List.of("temperature", "humidity"),
                OptionalDouble.of(2),
                OptionalDouble.of(0.3),
                OptionalDouble.of(0.1),
                OptionalDouble.of(0.1),
                List.of(salt));
    }

    /** The nearest multiple of 1/perUnit, as a logger or protractor shows it. */
    static double rounded(double value, int perUnit) {
        return Math.rint(value * perUnit) / perUnit;
    }
}
