package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.kind.RollOut;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * What the roll-outs of a session say of its cloth.
 *
 * @param count of roll-outs
 * @param mean coefficient of rolling; 0 without any
 * @param squares about the mean
 */
public record Rolling(int count, double mean, double squares) {
    /** Of a session without roll-outs. */
    static final Rolling NONE = new Rolling(0, 0, 0);

    /** From the {@code speed} trials of a session, in a given order; those whose ball slid or touched a rail do not count. */
    static Rolling of(SessionRecord session, List<Trial> ordered) {
        double[] seen = ordered.stream()
                .filter(trial -> trial.kind() == Kind.SPEED)
                .mapToDouble(trial -> RollOut.coefficient(session, trial))
                .filter(coefficient -> coefficient > 0)
                .toArray();
        if (seen.length == 0) {
            return NONE;
        }
        double sum = 0;
        for (double each : seen) {
            sum += each;
        }
        double mean = sum / seen.length;
        double squares = 0;
        for (double each : seen) {
            squares += (each - mean) * (each - mean);
        }
        return new Rolling(seen.length, mean, squares);
    }
}
