package org.tableweather.cli.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Session;

/**
 * Generates the contribution folders of an invented league: twelve rooms, five held climates each, twenty attempts of the
 * demonstration's shot, six of a one-rail rebound and six of a kick off two rails in each session, all attempts logged. The same seed gives the same
 * bytes.
 *
 * <p>Each room has its own departure (u0, u1) from the average room; the logger of a room reads a little too high or low;
 * the five targets near 30, 40, 50, 60 and 70 %RH come in an order drawn by lot, the temperature between 18 and 25 °C
 * without regard to them; the order of the attempts is drawn by lot. The ball feels the true climate, the folder holds what
 * the logger read.
 */
public final class InventedLeague {
    private static final List<Double> TARGETS_RH_PCT = List.of(30.0, 40.0, 50.0, 60.0, 70.0);
    private static final double LOGGER_RH_SD_PCT = 0.6;
    private static final double LOGGER_TEMP_SD_K = 0.1;

    // streams of their own: what is drawn for rails and paths does not change the pooled shot
    private static final long RAIL_STREAM = 0x5261696c73L;
    private static final long PATH_STREAM = 0x5061746873L;

    private final Truth truth;
    private final RailTruth rails = RailTruth.ofTheDemo();
    private final PathTruth paths = PathTruth.ofTheDemo();
    private final long seed;
    private final DemoShots shots;

    /**
     * A league.
     *
     * @param truth what the sessions are made from
     * @param seed of all chance
     */
    public InventedLeague(Truth truth, long seed) {
        this.truth = truth;
        this.seed = seed;
        this.shots = DemoShots.ofTheCatalogue();
    }

    /**
     * Writes one folder for each room.
     *
     * @param parent where the folders appear, each named after its room
     * @return the folders
     * @throws IOException when they cannot be written
     */
    public List<Path> write(Path parent) throws IOException {
        Files.createDirectories(parent);
        SeededDraws league = SeededDraws.of(seed);
        SeededDraws ofRails = SeededDraws.of(seed ^ RAIL_STREAM);
        SeededDraws ofPaths = SeededDraws.of(seed ^ PATH_STREAM);
        List<Path> folders = new ArrayList<>();
        int number = 0;
        for (InventedRoom room : InventedRoom.league()) {
            Path folder = parent.resolve(room.tree());
            writeRoom(folder, room, number++, league.split(), ofRails.split(), ofPaths.split());
            folders.add(folder);
        }
        return folders;
    }

    private void writeRoom(
            Path folder, InventedRoom room, int number, SeededDraws draws, SeededDraws ofRails, SeededDraws ofPaths)
            throws IOException {
        ClothFriction cloth = paths.cloth(ofPaths);
        RailTruth.Departure rail = rails.room(ofRails);
        RoomDeparture departure = RoomDeparture.draw(truth, draws);
        double rhOffsetPct = draws.normal(LOGGER_RH_SD_PCT);
        double tempOffsetK = draws.normal(LOGGER_TEMP_SD_K);
        List<InventedSession> sessions = new ArrayList<>();
        int visit = 0;
        for (double target : draws.shuffled(TARGETS_RH_PCT)) {
            sessions.add(InventedSession.draw(room, number, visit++, target, draws.split()));
        }
        List<Session> entries = sessions.stream().map(InventedSession::entry).toList();
        try (ContributionWriter writer = ContributionWriter.into(folder, room.contribution(rhOffsetPct, entries))) {
            for (InventedSession session : sessions) {
                session.writeClimate(writer, rhOffsetPct, tempOffsetK);
                InventedRebounds rebounds = InventedRebounds.draw(rails, rail, ofRails.split());
                InventedPaths own =
                        new InventedPaths(paths, rails, rebounds.departure(), cloth, room.size(), ofPaths.split());
                session.writeTrials(writer, truth, departure, shots, rebounds, own);
            }
        }
    }

    /**
     * What one room adds to the average one.
     *
     * @param interceptDeg u0
     * @param slopeDeg u1
     */
    record RoomDeparture(double interceptDeg, double slopeDeg) {

        // Cholesky factor of the 2 x 2 covariance: u1 = sd1·(ρ·z0 + sqrt(1 − ρ²)·z1)
        static RoomDeparture draw(Truth truth, SeededDraws draws) {
            double z0 = draws.normal(1);
            double z1 = draws.normal(1);
            double rho = truth.roomCorrelation();
            return new RoomDeparture(
                    truth.roomSd() * z0, truth.roomSlopeSd() * (rho * z0 + Math.sqrt(1 - rho * rho) * z1));
        }

        double deg(double rhPct) {
            return interceptDeg + slopeDeg * Truth.humidityUnits(rhPct);
        }
    }
}
