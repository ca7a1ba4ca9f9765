package org.tableweather.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows of many runs, drawn at random, against the sort of the JDK, which keeps equal rows as they came. */
class SortedSpillTest {
    private static final int ROWS = 150_000;
    private static final Comparator<Row> ORDER = Comparator.comparingInt(Row::place);

    @TempDir
    Path work;

    private record Row(String key, int place, int number) {}

    private static final class Codec implements SortedSpill.Codec<String, Row> {
        @Override
        public void write(Row row, DataOutput to) throws IOException {
            to.writeInt(row.place());
            to.writeInt(row.number());
        }

        @Override
        public Row read(String key, DataInput from) throws IOException {
            return new Row(key, from.readInt(), from.readInt());
        }
    }

    @Test
    void rowsOfManyRunsComeInOrder() throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        Map<String, List<Row>> expected = new TreeMap<>();
        try (Spill file = new Spill(work)) {
            SortedSpill<String, Row> spill = new SortedSpill<>(file, new Codec(), ORDER);
            for (int i = 0; i < ROWS; i++) {
                Row row = new Row(i % 5 == 0 ? "few" : "many", random.nextInt(1000), i);
                expected.computeIfAbsent(row.key(), key -> new ArrayList<>()).add(row);
                spill.put(row.key(), row);
            }
            assertThat(spill.has("none")).isFalse();
            for (Map.Entry<String, List<Row>> one : expected.entrySet()) {
                one.getValue().sort(ORDER);
                assertThat(spill.has(one.getKey())).isTrue();
                for (int times = 0; times < 2; times++) {
                    List<Row> rows = new ArrayList<>();
                    spill.each(one.getKey(), rows::add);
                    assertThat(rows).isEqualTo(one.getValue());
                }
            }
        }
    }
}
