package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/**
 * What is asked.
 *
 * @param shot of the catalogue; empty: typed, or chosen from the pool
 * @param start typed
 * @param aim typed
 * @param rails typed; empty: the shot's, or those that the ball meets
 * @param speedMps typed, at the start
 * @param sideSpinRps at the start, counter-clockwise from above
 * @param rollRatio at the start
 * @param from the first climate
 * @param to the second
 * @param room whose; empty: a new one
 * @param tableLengthMm playing length; empty: the room's, or 2540
 * @param measure what is taken for humidity
 * @param stepped whether the stepped impact is taken
 * @param draws of the band
 * @param seed of all that is drawn
 * @param check whether the pool's landings are held against predictions instead
 */
record PathQuestion(
        Optional<Shot> shot,
        Optional<Shot.Position> start,
        Optional<Shot.Position> aim,
        List<Rail> rails,
        Optional<Double> speedMps,
        double sideSpinRps,
        double rollRatio,
        AskedClimate from,
        AskedClimate to,
        Optional<String> room,
        Optional<Double> tableLengthMm,
        HumidityMeasure measure,
        boolean stepped,
        int draws,
        long seed,
        boolean check) {

    static final String SHOT = "shot";
    static final String START = "start_dia";
    static final String AIM = "aim_dia";
    static final String RAILS = "rails";
    static final String SPEED = "speed_mps";
    static final String SPIN = "side_spin_rps";
    static final String ROLL = "roll_ratio";
    static final String FROM_C = "from_temp_c";
    static final String FROM_PCT = "from_rh_pct";
    static final String TO_C = "to_temp_c";
    static final String TO_PCT = "to_rh_pct";
    static final String ROOM = "room";
    static final String TABLE = "table_length_mm";
    static final String MEASURE = "humidity_measure";
    static final String IMPACT = "impact";
    static final String STEPPED = "stepped";
    static final String DRAWS = "draws";
    static final String SEED = "seed";
    static final String TASK = "task";
    static final String PREDICT = "predict";
    static final String CHECK = "check-on-pool";

    static final int FEWEST_DRAWS = 200;
    static final int MOST_DRAWS = 100_000;
    private static final int MOST_RAILS = 8;
    private static final double LARGEST_SEED = 1L << 53;

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static PathQuestion of(Parameters parameters) {
        Optional<Shot.Position> start = position(parameters, START);
        Optional<Shot.Position> aim = position(parameters, AIM);
        Optional<Shot> shot = parameters.text(SHOT).map(PathQuestion::shot);
        if (shot.isEmpty() && start.isPresent() != aim.isPresent()) {
            throw new IllegalArgumentException("parameters " + START + " and " + AIM
                    + " belong together where no shot is named: set both, or a shot");
        }
        return new PathQuestion(
                shot,
                start,
                aim,
                rails(parameters.text(RAILS)),
                within(parameters, SPEED, 0.3, 14, "m/s"),
                within(parameters, SPIN, -40, 40, "revolutions a second").orElse(0.0),
                within(parameters, ROLL, -2, 2, "of natural roll").orElse(1.0),
                AskedClimate.of(parameters, FROM_C, FROM_PCT),
                AskedClimate.of(parameters, TO_C, TO_PCT),
                parameters.text(ROOM),
                within(parameters, TABLE, 1500, 4000, "mm"),
                HumidityMeasure.of(parameters.text(MEASURE).orElse(HumidityMeasure.RELATIVE.parameter)),
                parameters.text(IMPACT).filter(STEPPED::equals).isPresent(),
                (int) whole(parameters, DRAWS, FEWEST_DRAWS, MOST_DRAWS),
                (long) whole(parameters, SEED, 0, LARGEST_SEED),
                parameters.text(TASK).filter(CHECK::equals).isPresent());
    }

    boolean typed() {
        return shot.isEmpty() && start.isPresent();
    }

    private static Shot shot(String id) {
        return ShotCatalogue.byId(id).filter(PathQuestion::isPath).orElseThrow(() -> {
            List<String> known = paths().stream().map(Shot::id).toList();
            return new IllegalArgumentException("parameter " + SHOT + " = " + id
                    + " is no shot over rails of the catalogue: choose one of " + String.join(", ", known) + ", or set "
                    + START + " and " + AIM);
        });
    }

    /** Shots whose path over rails to a target rail is known. */
    static List<Shot> paths() {
        return ShotCatalogue.all().stream().filter(PathQuestion::isPath).toList();
    }

    private static boolean isPath(Shot shot) {
        return shot.start().isPresent()
                && shot.aim().isPresent()
                && shot.target().isPresent()
                && shot.targetRail().isPresent()
                && shot.approachSpeedMps().isPresent()
                && !shot.rails().isEmpty();
    }

    private static Optional<Shot.Position> position(Parameters parameters, String name) {
        return parameters.text(name).map(text -> {
            String[] parts = text.split(",");
            try {
                double x = Double.parseDouble(parts[0].trim());
                double y = Double.parseDouble(parts[1].trim());
                if (parts.length == 2 && x >= 0 && x <= 8 && y >= 0 && y <= 4) {
                    return new Shot.Position(x, y);
                }
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                // told below, with the name
            }
            throw new IllegalArgumentException("parameter " + name + " = " + text
                    + " is no place on the table: set x,y in diamonds, x 0 to 8 along, y 0 to 4 across, as 2.5,3");
        });
    }

    private static List<Rail> rails(Optional<String> text) {
        List<Rail> rails = new ArrayList<>();
        for (String name : text.map(all -> all.split(",")).orElse(new String[0])) {
            rails.add(Arrays.stream(Rail.values())
                    .filter(rail -> rail.schemaName().equals(name.trim().toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("parameter " + RAILS + " = " + text.get() + ": "
                            + name + " is no rail: set head, foot, near and far in their order, as near,foot")));
        }
        if (rails.size() > MOST_RAILS) {
            throw new IllegalArgumentException("parameter " + RAILS + " names " + rails.size() + " rails, more than "
                    + MOST_RAILS + ": set fewer");
        }
        return rails;
    }

    private static Optional<Double> within(Parameters parameters, String name, double low, double high, String unit) {
        Optional<Double> number = parameters.number(name);
        number.ifPresent(value -> {
            if (value < low || value > high) {
                throw new IllegalArgumentException("parameter " + name + " = " + Figures.plain(value) + " is outside "
                        + Figures.plain(low) + " to " + Figures.plain(high) + " " + unit + ": set a value inside");
            }
        });
        return number;
    }

    private static double whole(Parameters parameters, String name, double least, double most) {
        double number = within(parameters, name, least, most, "").orElse(least);
        if (number != Math.rint(number)) {
            throw new IllegalArgumentException(
                    "parameter " + name + " = " + Figures.plain(number) + " is not whole: set a whole number");
        }
        return number;
    }
}
