package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * How well a model foretells a room that it has not seen: each room in turn is left out, the model fitted to the rest, and its
 * population curve held against every trial of the room. Nothing is drawn by chance, and moments are all that it needs.
 *
 * @param squares sum of squared errors of each room's trials, in the order of the rooms
 * @param trials of each room
 */
public record RoomPrediction(double[] squares, long[] trials) {

    public RoomPrediction {
        squares = squares.clone();
        trials = trials.clone();
    }

    /**
     * Leaves out each room.
     *
     * @param model fitted to the others
     * @param rooms columns: covariates, then the response
     * @return empty when the model cannot be fitted without some room
     */
    public static Optional<RoomPrediction> of(NestedModel model, List<RoomSessions> rooms) {
        return of(model, rooms, room -> {});
    }

    /**
     * The same, told room by room.
     *
     * @param counter hears of each room before it is left out; what it throws ends the rest
     */
    public static Optional<RoomPrediction> of(NestedModel model, List<RoomSessions> rooms, IntConsumer counter) {
        double[] squares = new double[rooms.size()];
        long[] trials = new long[rooms.size()];
        for (int room = 0; room < squares.length; room++) {
            counter.accept(room);
            List<RoomSessions> others = new ArrayList<>(rooms);
            Moments left = others.remove(room).merged();
            if (others.isEmpty() || !(model.fit(others) instanceof NestedFit fit)) {
                return Optional.empty();
            }
            squares[room] = squares(fit, left);
            trials[room] = left.n();
        }
        return Optional.of(new RoomPrediction(squares, trials));
    }

    /** {@code Σ (y − b₀ − x'b)²} from the moments of x and y. */
    private static double squares(NestedFit fit, Moments room) {
        int covariates = room.columns() - 1;
        double[] weights = new double[room.columns()];
        double[] unit = new double[covariates + 1];
        double constant = 0;
        for (int column = 0; column <= covariates; column++) {
            Arrays.fill(unit, 0);
            unit[column] = 1;
            Quantity coefficient = fit.contrast(unit);
            if (column == 0) {
                constant = -coefficient.value();
            } else {
                weights[column - 1] = -coefficient.value();
            }
        }
        weights[covariates] = 1;
        Moments errors = room.transform(new double[][] {weights}, new double[] {constant});
        return errors.cross(0, 0) + errors.n() * errors.mean(0) * errors.mean(0);
    }

    @Override
    public double[] squares() {
        return squares.clone();
    }

    @Override
    public long[] trials() {
        return trials.clone();
    }

    /** Root of the mean squared error of all trials. */
    public double rootMeanSquare() {
        return Math.sqrt(Arrays.stream(squares).sum() / Arrays.stream(trials).sum());
    }

    /** Mean over rooms of the room's mean squared error: every room counts alike. */
    public double meanOfRooms() {
        return Arrays.stream(byRoom()).average().orElseThrow();
    }

    /** Standard error of {@link #meanOfRooms()}: rooms' standard deviation over the root of their number. */
    public double standardErrorOfRooms() {
        double mean = meanOfRooms();
        double sum = Arrays.stream(byRoom())
                .map(square -> (square - mean) * (square - mean))
                .sum();
        return Math.sqrt(sum / (squares.length - 1) / squares.length);
    }

    private double[] byRoom() {
        double[] means = new double[squares.length];
        for (int room = 0; room < means.length; room++) {
            means[room] = squares[room] / trials[room];
        }
        return means;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RoomPrediction that
                && Arrays.equals(squares, that.squares)
                && Arrays.equals(trials, that.trials);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(squares) + Arrays.hashCode(trials);
    }

    @Override
    public String toString() {
        return "RoomPrediction of " + squares.length + " rooms, " + rootMeanSquare();
    }
}
