package org.tableweather.schema.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Contact;

/** Marks of one path in order, with what is known of their errors. */
public final class MarkedPath {

    private final List<Mark> marks;
    private final MarkCovariance covariance;
    private final double toleranceM;
    private final double timeS;

    MarkedPath(List<Mark> marks, MarkCovariance covariance, double toleranceM, double timeS) {
        this.marks = List.copyOf(marks);
        this.covariance = covariance;
        this.toleranceM = toleranceM;
        this.timeS = timeS;
    }

    /**
     * Marks with independent errors.
     *
     * @param marks in order
     * @param error of each
     * @param table whose ball bounds the tolerance
     */
    public static MarkedPath of(List<Mark> marks, MarkingError error, TableSize table) {
        return new MarkedPath(
                marks,
                MarkCovariance.independent(marks.size(), error.pointM()),
                error.toleranceM(table),
                error.timeS());
    }

    /** The marks in order. */
    public List<Mark> marks() {
        return marks;
    }

    /** The same path as rows of {@code contacts.csv}, in metres. */
    public List<Contact> contacts(String session, String trial) {
        List<Contact> rows = new ArrayList<>();
        for (Mark mark : marks) {
            rows.add(new Contact(
                    session,
                    trial,
                    mark.seq(),
                    mark.point(),
                    mark.rail(),
                    Double.NaN,
                    Double.NaN,
                    mark.at().xM(),
                    mark.at().yM(),
                    mark.timeS()));
        }
        return rows;
    }

    /** Standard uncertainties of x and y of one mark, m. */
    public TablePoint standardUncertaintyM(int mark) {
        double[] x = new double[2 * marks.size()];
        double[] y = new double[2 * marks.size()];
        x[2 * mark] = 1;
        y[2 * mark + 1] = 1;
        return new TablePoint(Math.sqrt(covariance.variance(x)), Math.sqrt(covariance.variance(y)));
    }

    MarkedPath withMarks(List<Mark> moved) {
        return new MarkedPath(moved, covariance, toleranceM, timeS);
    }

    MarkCovariance covariance() {
        return covariance;
    }

    double toleranceM() {
        return toleranceM;
    }

    double timeS() {
        return timeS;
    }

    Optional<Mark> mark(int i) {
        return i >= 0 && i < marks.size() ? Optional.of(marks.get(i)) : Optional.empty();
    }
}
