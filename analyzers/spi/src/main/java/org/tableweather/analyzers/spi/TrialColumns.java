package org.tableweather.analyzers.spi;

import java.util.Set;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/**
 * All trials of one session as columns, in {@link Trial#CANONICAL_ORDER}. It lasts for the call that it is handed to: the host
 * may fill the same arrays with the next session.
 */
public interface TrialColumns {

    /** How many trials; rows are numbered from 0. */
    int size();

    /**
     * A number of every trial.
     *
     * @param number one that was asked for, see {@link ColumnarAnalyzer#numbers()}
     * @return an array that begins with {@link #size()} numbers in the order of the rows, NaN where not measured, and may be longer;
     *     to be read only
     * @throws IllegalArgumentException when it was not asked for
     */
    double[] numbers(TrialNumber number);

    /** Id of a trial within the session. */
    String trial(int row);

    /** Id of a trial's shot definition. */
    String shot(int row);

    /** What a trial tests. */
    Kind kind(int row);

    /** Made or missed. */
    Made made(int row);

    /**
     * The columns of trials that are there as rows.
     *
     * @param trials all of a session, in any order
     * @param numbers that will be asked for
     */
    static TrialColumns of(Iterable<Trial> trials, Set<TrialNumber> numbers) {
        return new RowColumns(trials, numbers);
    }
}
