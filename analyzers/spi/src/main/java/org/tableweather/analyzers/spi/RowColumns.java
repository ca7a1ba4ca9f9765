package org.tableweather.analyzers.spi;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/** Columns of trials that are there as rows. */
final class RowColumns implements TrialColumns {
    private final List<Trial> trials = new ArrayList<>();
    private final Map<TrialNumber, double[]> numbers = new EnumMap<>(TrialNumber.class);

    RowColumns(Iterable<Trial> trials, Set<TrialNumber> wanted) {
        trials.forEach(this.trials::add);
        this.trials.sort(Trial.CANONICAL_ORDER);
        for (TrialNumber number : wanted) {
            numbers.put(number, this.trials.stream().mapToDouble(number::of).toArray());
        }
    }

    @Override
    public int size() {
        return trials.size();
    }

    @Override
    public double[] numbers(TrialNumber number) {
        double[] column = numbers.get(number);
        if (column == null) {
            throw new IllegalArgumentException(number.column() + " was not asked for: name it among the numbers");
        }
        return column;
    }

    @Override
    public String trial(int row) {
        return trials.get(row).trial();
    }

    @Override
    public String shot(int row) {
        return trials.get(row).shot();
    }

    @Override
    public Kind kind(int row) {
        return trials.get(row).kind();
    }

    @Override
    public Made made(int row) {
        return trials.get(row).made();
    }
}
