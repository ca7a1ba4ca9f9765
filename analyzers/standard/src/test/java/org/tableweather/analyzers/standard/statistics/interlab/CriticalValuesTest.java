package org.tableweather.analyzers.standard.statistics.interlab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;

class CriticalValuesTest {

    private static List<String> rows(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(CriticalValuesTest.class.getResourceAsStream("/golden/interlab/" + name)),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("p,"))
                    .toList();
        }
    }

    private static double compute(String[] cells) {
        int p = Integer.parseInt(cells[0]);
        double alpha = Double.parseDouble(cells[2]);
        return switch (cells[3]) {
            case "mandel_h" -> CriticalValues.mandelH(alpha, p);
            case "grubbs" -> CriticalValues.grubbs(alpha, p);
            case "mandel_k" -> CriticalValues.mandelK(alpha, p, Integer.parseInt(cells[1]));
            case "cochran" -> CriticalValues.cochran(alpha, p, Integer.parseInt(cells[1]));
            default -> throw new IllegalArgumentException(cells[3]);
        };
    }

    @Test
    void meetsTheClosedFormsOfAnotherImplementation() throws IOException {
        List<String> rows = rows("critical-values.csv");
        assertThat(rows).hasSize(1120);
        for (String row : rows) {
            String[] cells = row.split(",");
            assertThat(compute(cells)).as(row).isCloseTo(Double.parseDouble(cells[4]), within(1e-11));
        }
    }

    /** Half a unit of the last printed digit, and a little for the table's own rounding. */
    @Test
    void meetsThePrintedTables() throws IOException {
        List<String> rows = rows("printed-critical-values.csv");
        assertThat(rows).hasSize(630);
        for (String row : rows) {
            String[] cells = row.split(",");
            double unit = cells[3].startsWith("mandel") ? 0.01 : 0.001;
            assertThat(compute(cells)).as(row).isCloseTo(Double.parseDouble(cells[4]), within(0.501 * unit));
        }
    }

    @Test
    void twoOutliersMeetTheTable() {
        GoldenFile golden = GoldenFile.read("interlab/grubbs-pair.properties");
        double[] sizes = golden.numbers("p");
        for (int i = 0; i < sizes.length; i++) {
            int p = (int) sizes[i];
            double tolerance = golden.number("tolerance");
            assertThat(CriticalValues.grubbsPair(0.01, p)).isCloseTo(golden.numbers("one")[i], within(tolerance));
            assertThat(CriticalValues.grubbsPair(0.05, p)).isCloseTo(golden.numbers("five")[i], within(tolerance));
        }
    }

    /** A quantile found in 200,000 sets must have its chance within four standard errors. */
    @ParameterizedTest
    @CsvSource({"q005, 0.005", "q01, 0.01", "q025, 0.025", "q05, 0.05"})
    void twoOutliersMeetASimulationElsewhere(String key, double chance) {
        GoldenFile golden = GoldenFile.read("interlab/grubbs-pair.properties");
        double[] sizes = golden.numbers("simulated.p");
        for (int i = 0; i < sizes.length; i++) {
            double found = new TwoOutlierRatio((int) sizes[i]).chance(golden.numbers("simulated." + key)[i]);
            assertThat(found).isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / 200_000)));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 5, 6, 9, 20, 40, 100})
    void twoOutliersHaveTotalChanceOne(int p) {
        assertThat(new TwoOutlierRatio(p).chance(1)).isCloseTo(1, within(1e-6));
    }

    /** 200,000 seeded sets of normal values; four standard errors. */
    @ParameterizedTest
    @CsvSource({"4, 0.05", "5, 0.25", "12, 0.25", "20, 0.5"})
    void twoOutliersMeetASimulationHere(int p, double chance) {
        double bound = new TwoOutlierRatio(p).quantile(chance);
        Random random = new Random(p);
        int sets = 200_000;
        int below = 0;
        for (int set = 0; set < sets; set++) {
            double[] values = random.doubles(p).toArray();
            Arrays.setAll(values, i -> random.nextGaussian());
            Arrays.sort(values);
            below += squares(values, p - 2) / squares(values, p) <= bound ? 1 : 0;
        }
        assertThat((double) below / sets).isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / sets)));
    }

    private static double squares(double[] values, int count) {
        double mean = Arrays.stream(values, 0, count).sum() / count;
        return Arrays.stream(values, 0, count)
                .map(value -> (value - mean) * (value - mean))
                .sum();
    }

    /** For three values the largest deviate's sine angle is uniform between 30° and 90° (the sphere is a circle). */
    @Test
    void theLargestOfThreeIsUniformOnACircle() {
        LargestDeviate three = LargestDeviate.of(3);
        double b = Math.sqrt(2.0 / 3) * Math.sin(Math.toRadians(45));
        assertThat(LargestDeviate.chance(three, b)).isCloseTo(0.25, within(1e-12));
    }
}
