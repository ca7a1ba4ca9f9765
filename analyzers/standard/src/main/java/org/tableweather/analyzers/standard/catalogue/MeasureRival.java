package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.RoomPrediction;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * A candidate's model, {@code y = b₀ + b₁ x + (u₀ + u₁ x)[room] + w[session] + e}, by full likelihood: models that differ in x may be
 * compared by it.
 *
 * @param candidate what x is
 * @param fit of all rooms
 * @param prediction each room foretold from the others
 * @param aic {@code −2 log L + 2 k}
 * @param bic {@code −2 log L + k log n}, n the number of sessions: climates are set session by session
 * @source Akaike1974
 * @source Schwarz1978
 */
record MeasureRival(
        MeasureCandidate candidate, NestedFit fit, Optional<RoomPrediction> prediction, double aic, double bic) {

    /** b₀, residual and session variance, and the room's variance; with x also b₁, and slope and covariance of the rooms. */
    private static final int PARAMETERS = 7;

    private static final int PARAMETERS_OF_NOTHING = 4;

    /** Fits it; empty where there is no fit, or one that is no maximum. */
    static Optional<MeasureRival> of(
            MeasureCandidate candidate, List<RoomSessions> pooled, ConclusionListener listener) {
        List<RoomSessions> rooms = pooled.stream()
                .map(room -> new RoomSessions(
                        room.key(),
                        room.sessions().stream()
                                .map(session -> session.select(candidate.selected()))
                                .toList()))
                .toList();
        boolean nothing = candidate == MeasureCandidate.NOTHING;
        NestedModel model = NestedModel.withDefaults().with(Method.ML);
        NestedModel full = nothing ? model : model.withRandom(0, 1);
        if (!(full.fit(rooms) instanceof NestedFit fit)
                || !fit.converged()
                || !fit.dropped().isEmpty()) {
            return Optional.empty();
        }
        int k = nothing ? PARAMETERS_OF_NOTHING : PARAMETERS;
        long sessions = rooms.stream().mapToLong(room -> room.sessions().size()).sum();
        return Optional.of(new MeasureRival(
                candidate,
                fit,
                RoomPrediction.of(full, rooms, room -> listener.at(candidate.name, room, rooms.size())),
                fit.criterion() + 2 * k,
                fit.criterion() + k * StrictMath.log(sessions)));
    }

    /** Error of a room foretold from the others, root mean square over trials; NaN where some room cannot be left out. */
    double predictionError() {
        return prediction.map(RoomPrediction::rootMeanSquare).orElse(Double.NaN);
    }
}
