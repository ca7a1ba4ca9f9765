package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/**
 * How often a true effect of zero is called significant at 5 %, in 8 rooms of 4 sessions of 20 trials, humidity varying
 * between sessions only; standard deviations room 1, session 0.5, trial 2, room slope 0 or 0.25.
 *
 * <p>Expected: the rates of an independent study of this design, 1600 replicates, in {@code golden/typeI_slope*.json}. Its
 * humidities are not stated; room means of standard deviation 0.8 and sessions of 1.2 about them come near its rates for
 * least squares. Bounds are four Monte-Carlo standard errors of the difference. Sessions are drawn as their statistic: a
 * mean, and a chi-square for the scatter of trials.
 */
class RejectionStudyTest {

    private static final int REPLICATES = 1000;
    private static final int PUBLISHED_REPLICATES = 1600;

    @ParameterizedTest
    @CsvSource({"typeI_slope0.json, room slope SD 0.00, 0", "typeI_slope0.25.json, room slope SD 0.25, 0.25"})
    void rejectsATrueNullAsOftenAsPublished(String file, String key, double slopeDeviation) {
        JsonNode published = Golden.json(file).get(key);
        Random random = new Random(2024);
        int mixed = 0;
        int leastSquares = 0;
        int covered = 0;
        for (int replicate = 0; replicate < REPLICATES; replicate++) {
            List<RoomSessions> rooms = draw(random, slopeDeviation);
            NestedFit fit =
                    (NestedFit) NestedModel.withDefaults().withRandom(0, 1).fit(rooms);
            double newSlope = slopeDeviation * random.nextGaussian();
            mixed += isWithin(fit.coefficient(1).orElseThrow(), 0) ? 0 : 1;
            covered += isWithin(fit.inNewRoom(new double[] {0, 1}), newSlope) ? 1 : 0;
            leastSquares += isWithin(leastSquares(rooms), 0) ? 0 : 1;
        }

        assertRate(mixed, published.get("(1+rh|room)+(1|session) Satterthwaite"));
        assertRate(leastSquares, published.get("naive OLS, trials"));
        // nominal 0.95; with Satterthwaite's df of the population curve instead it would be 0.86 to 0.93
        assertThat(covered / (double) REPLICATES).isGreaterThan(0.93);
    }

    private static void assertRate(int rejected, JsonNode published) {
        double rate = published.get("all").asDouble();
        double error = Math.sqrt(rate * (1 - rate) * (1.0 / REPLICATES + 1.0 / PUBLISHED_REPLICATES));
        assertThat(rejected / (double) REPLICATES).isEqualTo(rate, within(4 * error));
    }

    private static boolean isWithin(Quantity estimate, double truth) {
        double reach = StudentT.halfWidth(0.95, Math.max(1, estimate.df())) * estimate.standardError();
        return Math.abs(estimate.value() - truth) <= reach;
    }

    private static Quantity leastSquares(List<RoomSessions> rooms) {
        LinearRegression fit = LinearRegression.withIntercept(Moments.merged(NestedData.sessionsOf(rooms)));
        return new Quantity(fit.coefficients()[1], fit.standardError(1), fit.residualDf());
    }

    private static List<RoomSessions> draw(Random random, double slopeDeviation) {
        List<RoomSessions> rooms = new ArrayList<>();
        for (int room = 0; room < 8; room++) {
            double climate = 0.8 * random.nextGaussian();
            double intercept = random.nextGaussian();
            double slope = slopeDeviation * random.nextGaussian();
            List<Moments> sessions = new ArrayList<>();
            for (int session = 0; session < 4; session++) {
                double humidity = climate + 1.2 * random.nextGaussian();
                double mean = intercept + slope * humidity + 0.5 * random.nextGaussian();
                sessions.add(session(humidity, mean, random));
            }
            rooms.add(new RoomSessions("room " + room, sessions));
        }
        return rooms;
    }

    private static Moments session(double humidity, double mean, Random random) {
        double squares = 0;
        for (int i = 0; i < 19; i++) {
            squares += Math.pow(2 * random.nextGaussian(), 2);
        }
        double drawn = mean + 2 / Math.sqrt(20) * random.nextGaussian();
        return new Moments(20, new double[] {humidity, drawn}, new double[] {0, 0, squares});
    }
}
