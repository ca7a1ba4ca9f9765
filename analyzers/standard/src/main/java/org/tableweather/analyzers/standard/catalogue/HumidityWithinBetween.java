package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedOutcome;
import org.tableweather.analyzers.standard.statistics.RoomSessions;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;

/**
 * Parts humidity into each room's mean and the departure from it, and gives each a slope of its own:
 *
 * <pre>
 * y = b₀ + b_w (x − x̄[room]) + b_b x̄[room] + the other columns + (u₀ + u₁ (x − x̄))[room] + w[session] + e
 * </pre>
 *
 * <p>A hygrometer that reads wrong by a constant moves a room's mean and nothing else, and rooms that are damper may differ
 * in other ways too: both reach b_b alone. The moments of a room turn into those of the parted columns exactly. The pooled
 * slope is about the mean of the two, weighed by their variances.
 *
 * @source Mundlak1978
 * @source Neuhaus1998
 */
final class HumidityWithinBetween {

    private static final int LEAST_ROOMS = 3;

    private final HumidityFit pooled;

    HumidityWithinBetween(HumidityFit pooled) {
        this.pooled = pooled;
    }

    HumidityPart part() {
        HumidityPool pool = pooled.pool();
        int columns = pooled.columns().count() + 1;
        if (pool.rooms.size() < LEAST_ROOMS
                || pool.usedSessions <= pooled.columns().climate() + 1) {
            return HumidityPart.NOTHING;
        }
        List<RoomSessions> parted =
                pool.rooms.stream().map(HumidityWithinBetween::parted).toList();
        NestedOutcome outcome = HumidityModels.of(pooled.columns(), 1).fit(parted, pooled.fit());
        if (!(outcome instanceof NestedFit plain) || !plain.converged()) {
            return HumidityPart.NOTHING;
        }
        NestedFit fit =
                pooled.question().kenwardRoger() ? plain.withKenwardRoger().orElse(plain) : plain;
        Optional<Quantity> within = fit.coefficient(1);
        Optional<Quantity> between = fit.coefficient(2);
        if (within.isEmpty() || between.isEmpty()) {
            return HumidityPart.warning(
                    within.isEmpty()
                            ? "Humidity does not vary within rooms: the slope rests on differences between rooms alone,"
                                    + " which wrong hygrometers and all else that differs between rooms reach."
                            : "All rooms have the same mean humidity: the slope rests on differences within rooms alone.");
        }
        double[] difference = new double[columns];
        difference[1] = -1;
        difference[2] = 1;
        return told(within.get(), between.get(), fit.contrast(difference));
    }

    /** Columns x − x̄, x̄, then the others. */
    private static RoomSessions parted(RoomSessions room) {
        double mean = room.merged().mean(0);
        int size = room.sessions().get(0).columns();
        double[][] linear = new double[size + 1][size];
        double[] constant = new double[size + 1];
        linear[0][0] = 1;
        constant[0] = -mean;
        constant[1] = mean;
        for (int column = 1; column < size; column++) {
            linear[column + 1][column] = 1;
        }
        List<Moments> sessions = room.sessions().stream()
                .map(session -> session.transform(linear, constant))
                .toList();
        return new RoomSessions(room.key(), sessions);
    }

    private HumidityPart told(Quantity within, Quantity between, Quantity difference) {
        double precisionWithin = 1 / (within.standardError() * within.standardError());
        double precisionBetween = 1 / (between.standardError() * between.standardError());
        double share = precisionWithin / (precisionWithin + precisionBetween);
        double chance =
                Coverage.twoSided(difference.value() / difference.standardError(), Math.max(1, difference.df()));
        String unit = pooled.slopeUnit();
        List<Estimate> estimates = List.of(
                FitFigures.estimate(
                        "humidity.within",
                        within,
                        unit,
                        pooled.slopeMeaning()
                                + ", from differences within rooms: a hygrometer's constant error cancels"),
                FitFigures.estimate(
                        "humidity.between",
                        between,
                        unit,
                        pooled.slopeMeaning()
                                + ", from differences between rooms' means: all else that differs enters"),
                FitFigures.estimate(
                        "humidity.between-within",
                        difference,
                        unit,
                        "the slope between rooms less that within them; zero when both tell the same"));
        List<String> warnings = new ArrayList<>();
        if (Math.abs(difference.value()) > FitFigures.reach(difference)) {
            warnings.add("Within rooms and between rooms the slope differs ("
                    + pooled.figure(within.value()) + " and " + pooled.figure(between.value()) + " "
                    + pooled.question().measure().per() + ", p = " + Figures.fixed(chance, 3)
                    + "): trust the one within rooms; check the hygrometers against each other, and what else differs"
                    + " between damp and dry rooms.");
        }
        return new HumidityPart(
                words(share),
                estimates,
                List.of(),
                warnings,
                Map.of("betweenWithinPValue", chance, "shareWithinRooms", share));
    }

    private static String words(double share) {
        String percent = Figures.fixed(100 * Math.max(share, 1 - share), 0) + " %";
        return share >= 0.5
                ? " The slope rests to about " + percent + " on differences within rooms."
                : " The slope rests to about " + percent
                        + " on differences between rooms, which hygrometers that disagree would change.";
    }
}
