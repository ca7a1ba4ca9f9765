package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.Optional;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Interval;
import org.tableweather.analyzers.standard.statistics.ranking.Places;

/**
 * One departure of a room from the average room, shrunken.
 *
 * @param name {@code intercept}, {@code humidity}
 * @param average of the average room
 * @param here in this room, with the uncertainty of both
 * @param value what this room adds
 * @param standardError of the value
 * @param roomSd how much rooms vary
 * @param place 1 for the largest value among the rooms
 * @param places empty where rooms do not vary
 */
record RoomDeparture(
        String name,
        Quantity average,
        Quantity here,
        double value,
        double standardError,
        double roomSd,
        int place,
        Optional<Places> places) {

    static final String LEVEL = "intercept";
    static final String SLOPE = "humidity";

    /** Beyond this many room standard deviations a departure is unusual (common practice, no source). */
    private static final double UNUSUAL = 2;

    /** Of a room and an effect, both by position. */
    static RoomDeparture of(NestedFit fit, int room, int effect) {
        int count = fit.rooms().size();
        double[] values = new double[count];
        double[] variances = new double[count];
        int place = 1;
        for (int other = 0; other < count; other++) {
            values[other] = fit.rooms().get(other).effects()[effect];
            variances[other] = fit.rooms().get(other).variance()[effect][effect];
        }
        for (double value : values) {
            place += value > values[room] ? 1 : 0;
        }
        int column = fit.random().get(effect);
        double[] row = new double[RoomModel.CLIMATE.size() + 1];
        row[column] = 1;
        return new RoomDeparture(
                column == 0 ? LEVEL : SLOPE,
                fit.contrast(row),
                fit.inRoom(room, row),
                values[room],
                Math.sqrt(variances[room]),
                Math.sqrt(fit.roomCovariance()[effect][effect]),
                place,
                Places.of(room, values, variances).fold(Optional::of, refusal -> Optional.empty()));
    }

    /** 95 %, the variances taken as known. */
    Interval interval() {
        return Interval.around(value, Coverage.DEFAULT.halfWidth(Double.POSITIVE_INFINITY) * standardError);
    }

    boolean isClear() {
        return !interval().contains(0);
    }

    /** Share of the differences between rooms that is known of this room: 0 nothing, 1 all. */
    double reliability() {
        return roomSd == 0 ? 0 : Math.max(0, 1 - standardError * standardError / (roomSd * roomSd));
    }

    String verdict() {
        if (!isClear()) {
            return "the data do not tell it from an average room";
        }
        return Math.abs(value) <= UNUSUAL * roomSd
                ? "a real departure, of a size that rooms show"
                : "unusual among rooms";
    }
}
