package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MomentsTest {

    /**
     * Correct digits of S_xx and S_yy against exact decimal arithmetic, on data of the shape of golden/stability.json; one
     * digit less than there is asked for, as the draws differ.
     */
    @ParameterizedTest
    @CsvSource({
        "mean100_sd2, 100, 2",
        "mean10000_sd1, 10000, 1",
        "mean1e+06_sd1, 1000000, 1",
        "mean1e+08_sd1, 100000000, 1"
    })
    void keepsTheDigitsOfSumsOfSquares(String shape, double mean, double deviation) {
        List<double[]> rows = draw(mean, deviation);
        JsonNode published = Golden.json("stability.json").get("values").get(shape);

        assertDigits(of(rows), rows, published.get("welford"));
        assertDigits(Moments.merged(blocks(rows, 20)), rows, published.get("chan_tree"));
        List<double[]> centred = rows.stream()
                .map(row -> new double[] {row[0] - mean, row[1] - mean})
                .toList();
        assertDigits(Moments.merged(blocks(centred, 20)), rows, published.get("agreed_centre_welford_tree"));
    }

    private static void assertDigits(Moments moments, List<double[]> rows, JsonNode published) {
        for (int column = 0; column < 2; column++) {
            double exact = exactSquares(rows, column);
            double digits = -Math.log10(Golden.relative(moments.cross(column, column), exact) + 1e-17);
            assertThat(digits).isGreaterThan(published.get(2 * column).asDouble() - 1);
        }
    }

    private static double exactSquares(List<double[]> rows, int column) {
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal squares = BigDecimal.ZERO;
        for (double[] row : rows) {
            BigDecimal value = new BigDecimal(row[column]);
            sum = sum.add(value);
            squares = squares.add(value.multiply(value));
        }
        BigDecimal n = BigDecimal.valueOf(rows.size());
        return squares.subtract(sum.multiply(sum).divide(n, new MathContext(60)))
                .doubleValue();
    }

    @Test
    void mergesToTheSameMomentsWhateverTheBlocks() {
        List<double[]> rows = draw(3, 2);
        Moments whole = of(rows);

        for (int size : new int[] {1, 7, 500}) {
            Moments merged = Moments.merged(blocks(rows, size));
            assertThat(merged.n()).isEqualTo(whole.n());
            assertThat(merged.mean()).containsExactly(whole.mean(), within(1e-12));
            assertThat(merged.cross()).containsExactly(whole.cross(), within(1e-9));
        }
    }

    @Test
    void mergingWithNoneChangesNoBit() {
        Moments some = of(draw(3, 2));

        assertThat(Moments.none(2).plus(some)).isEqualTo(some);
        assertThat(some.plus(Moments.none(2))).isEqualTo(some).hasSameHashCodeAs(some);
    }

    @Test
    void movesAHumidityAndItsSquareToAnotherOrigin() {
        List<double[]> rows = new ArrayList<>();
        List<double[]> moved = new ArrayList<>();
        for (double[] row : draw(3, 2)) {
            rows.add(new double[] {row[0], row[0] * row[0], row[1]});
            moved.add(new double[] {row[0] - 2, (row[0] - 2) * (row[0] - 2), row[1]});
        }

        Moments transformed =
                of(rows).transform(new double[][] {{1, 0, 0}, {-4, 1, 0}, {0, 0, 1}}, new double[] {-2, 4, 0});

        assertThat(transformed.mean()).containsExactly(of(moved).mean(), within(1e-11));
        assertThat(transformed.cross()).containsExactly(of(moved).cross(), within(1e-6));
    }

    @Test
    void selectsColumnsInTheOrderAsked() {
        Moments moments = of(List.of(new double[] {1, 2, 4}, new double[] {3, 5, 5}));

        Moments selected = moments.select(2, 0);

        assertThat(selected).isEqualTo(of(List.of(new double[] {4, 1}, new double[] {5, 3})));
        assertThat(selected.minus(4, 0).mean()).containsExactly(0.5, 2);
    }

    @Test
    void comesBackFromJsonWithTheSameBits() throws Exception {
        Moments moments = of(draw(41.3, 0.7));
        JsonMapper mapper = new JsonMapper();

        Moments back = mapper.readValue(mapper.writeValueAsBytes(moments), Moments.class);

        assertThat(back).isEqualTo(moments);
        assertThat(back.toString()).isEqualTo(moments.toString());
    }

    @Test
    void refusesWhatCannotBeMoments() {
        double[] mean = {0};
        assertThatThrownBy(() -> new Moments(-1, mean, new double[] {0})).hasMessageContaining("got n -1");
        assertThatThrownBy(() -> new Moments(1, mean, new double[] {0, 0})).hasMessageContaining("lower triangle");
        assertThatThrownBy(() -> new Moments(2, mean, new double[] {-1})).hasMessageContaining("at least 0");
        assertThatThrownBy(() -> new Moments(2, mean, new double[] {Double.NaN}))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> new Moments(2, new double[] {1 / 0.0}, new double[] {1}))
                .hasMessageContaining("finite");
    }

    private static Moments of(List<double[]> rows) {
        MomentsBuilder builder = new MomentsBuilder(rows.get(0).length);
        rows.forEach(builder::add);
        return builder.build();
    }

    private static List<Moments> blocks(List<double[]> rows, int size) {
        List<Moments> blocks = new ArrayList<>();
        for (int from = 0; from < rows.size(); from += size) {
            blocks.add(of(rows.subList(from, Math.min(from + size, rows.size()))));
        }
        return blocks;
    }

    private static List<double[]> draw(double mean, double deviation) {
        Random random = new Random(7);
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            rows.add(new double[] {mean + deviation * random.nextGaussian(), mean + deviation * random.nextGaussian()});
        }
        return rows;
    }
}
