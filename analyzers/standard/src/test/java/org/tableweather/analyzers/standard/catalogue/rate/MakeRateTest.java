package org.tableweather.analyzers.standard.catalogue.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

class MakeRateTest extends AnalyzerContract<RateSummary> {

    private static final GoldenFile CBPP = GoldenFile.read("binomial/cbpp.properties");

    @Override
    protected Analyzer<RateSummary> analyzer() {
        return new MakeRate();
    }

    @Override
    protected List<Example> examples() {
        return drawn(6, 4, 30, -0.4, 0, 5).stream()
                .map(held -> new Example(held.session(), held.trials()))
                .toList();
    }

    private static Estimated estimated(List<Held> pool, Map<String, String> set) {
        Analysis analysis = Held.analysed(new MakeRate(), pool, set);
        assertThat(analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    private static Declined declined(List<Held> pool, Map<String, String> set) {
        Analysis analysis = Held.analysed(new MakeRate(), pool, set);
        assertThat(analysis).isInstanceOf(Declined.class);
        return (Declined) analysis;
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(estimate -> estimate.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Plot plot(Estimated answer, String id) {
        return answer.plots().stream()
                .filter(plot -> plot.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /**
     * The published herds as rooms, a case of disease as a ball made. The four periods are climates whose h, h² and t span the
     * same model as the four levels: 30, 40 and 50 %RH at 21 °C, and 60 %RH at 26 °C.
     */
    private static List<Held> herds() {
        String[] herds = CBPP.words("herd");
        double[] periods = CBPP.numbers("period");
        List<Held> pool = new ArrayList<>();
        for (int i = 0; i < herds.length; i++) {
            double rhPct = 20 + 10 * periods[i];
            double tempC = periods[i] == 4 ? 26 : 21;
            int made = (int) CBPP.numbers("incidence")[i];
            int tried = (int) CBPP.numbers("size")[i];
            pool.add(session("herd-" + herds[i], "s" + i, rhPct, tempC, made, tried));
        }
        return pool;
    }

    private static Held session(String room, String session, double rhPct, double tempC, int made, int tried) {
        List<Trial> trials = new ArrayList<>();
        for (int number = 1; number <= tried; number++) {
            trials.add(new TrialDraft(Kind.REBOUND, number)
                    .climate(tempC, rhPct)
                    .made(number <= made ? Made.YES : Made.NO)
                    .build());
        }
        return new Held(new SessionDraft(room, session).build(), trials);
    }

    /** Room sd 0.5, level 0.3 on the log odds; humidity 30 to 70 %RH, temperature 18 to 24 °C. */
    private static List<Held> drawn(int rooms, int sessions, int tried, double slope, double sessionSd, long seed) {
        Random random = new Random(seed);
        List<Held> pool = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            double level = 0.3 + 0.5 * random.nextGaussian();
            for (int session = 0; session < sessions; session++) {
                double rhPct = 30 + 40 * random.nextDouble();
                double odds = level + slope * (rhPct - 50) / 10 + sessionSd * random.nextGaussian();
                double chance = 1 / (1 + Math.exp(-odds));
                int made = (int)
                        random.doubles(tried).filter(draw -> draw < chance).count();
                pool.add(session("room-" + room, "s" + session, rhPct, 18 + 6 * random.nextDouble(), made, tried));
            }
        }
        return pool;
    }

    /** glmer of cbpp, period as a factor, by Laplace and by nine points, through summaries and the whole answer. */
    @ParameterizedTest
    @ValueSource(ints = {1, 9})
    void meetsPublishedSoftware(int points) {
        Estimated answer =
                estimated(herds(), Map.of("shape", "quadratic", "quadrature_points", Integer.toString(points)));
        double[] fixed = CBPP.numbers(points + ".fixef");
        double[] errors = CBPP.numbers(points + ".se");
        Map<Double, CurvePoint> curve = new HashMap<>();
        answer.curve().forEach(point -> curve.put(point.rhPct(), point));

        assertThat(logOdds(curve.get(30.0).mean())).isCloseTo(fixed[0], within(1e-7));
        assertThat(logOdds(curve.get(40.0).mean())).isCloseTo(fixed[0] + fixed[1], within(1e-7));
        assertThat(logOdds(curve.get(50.0).mean())).isCloseTo(fixed[0] + fixed[2], within(1e-7));
        double band = logOdds(curve.get(30.0).upper()) - logOdds(curve.get(30.0).lower());
        // 1.959964: the normal distribution's 97.5 % point
        assertThat(band / 2 / 1.959963984540054).isCloseTo(errors[0], within(1e-6));
        assertThat(answer.variance().get(0).sd().orElseThrow()).isCloseTo(CBPP.number(points + ".sd"), within(1e-7));
        Estimate h = estimate(answer, "humidity");
        Estimate hh = estimate(answer, "humidity.squared");
        Estimate t = estimate(answer, "temperature");
        double fourth = estimate(answer, "intercept").value() + h.value() + hh.value() + t.value();
        assertThat(fourth).isCloseTo(fixed[0] + fixed[3], within(1e-7));
        assertThat(estimate(answer, "humidity.odds-ratio").value()).isCloseTo(Math.exp(h.value()), within(1e-12));
    }

    @Test
    void meetsThePublishedLikelihoodAndRooms() {
        Estimated answer = estimated(herds(), Map.of("shape", "quadratic"));

        assertThat((Double) answer.fit().get("logLikelihood")).isCloseTo(CBPP.number("1.logLik"), within(1e-8));
        assertThat((Double) answer.fit().get("akaike")).isCloseTo(CBPP.number("1.AIC"), within(2e-8));
        assertThat((Double) answer.fit().get("naiveLogLikelihood")).isCloseTo(CBPP.number("glm.logLik"), within(1e-8));
        assertThat(answer.fit()).containsEntry("trials", 842L).containsEntry("rooms", 15);
        assertThat(answer.rooms()).hasSize(15).allSatisfy(room -> {
            int herd = Integer.parseInt(room.room().substring("herd-".length()));
            assertThat(room.effects().get(0).value()).isCloseTo(CBPP.numbers("1.mode")[herd - 1], within(1e-6));
            assertThat(room.effects().get(0).standardError())
                    .isCloseTo(CBPP.numbers("1.mode.sd")[herd - 1], within(1e-6));
        });
    }

    private static double logOdds(double pct) {
        return Math.log(pct / (100 - pct));
    }

    /** Four standard errors: missed once in 16,000 draws. */
    @Test
    void recoversTheTruth() {
        Estimated answer = estimated(drawn(20, 5, 40, -0.5, 0, 3), Map.of());

        Estimate humidity = estimate(answer, "humidity");
        assertThat(humidity.value()).isCloseTo(-0.5, within(4 * humidity.standardError()));
        assertThat(answer.sentence()).contains("less often when damp").contains("multiplies the odds by 0.");
        Estimate change = estimate(answer, "made.change");
        assertThat(change.upper()).isNegative();
        List<CurvePoint> curve = answer.curve();
        assertThat(change.value())
                .isCloseTo(curve.get(curve.size() - 1).mean() - curve.get(0).mean(), within(1e-9));
        assertThat(answer.warnings())
                .anyMatch(warning -> warning.startsWith("Invented data"))
                .noneMatch(warning -> warning.contains("Pearson"))
                .noneMatch(warning -> warning.contains("scatter"));
    }

    @Test
    void drawsTheCurveFirstAndTheCalibrationBeside() {
        Estimated answer = estimated(drawn(20, 5, 40, -0.5, 0, 3), Map.of());

        assertThat(answer.plots().get(0).id()).isEqualTo("curve");
        assertThat(answer.plots().get(0).series()).hasSize(3 + 20);
        Series groups = plot(answer, "calibration").series().get(1);
        assertThat(groups.x()).hasSizeBetween(8, 10).isSorted();
        for (int i = 0; i < groups.x().size(); i++) {
            assertThat(groups.y().get(i))
                    .isBetween(groups.lower().get(i), groups.upper().get(i));
        }
    }

    /** At the top of a likelihood with an intercept, and rooms alike, expected and observed sums are equal. */
    @Test
    void calibrationMeetsTheTotal() {
        List<Held> pool = new ArrayList<>();
        for (String room : List.of("a", "b", "c")) {
            pool.add(session(room, "s1", 40, 21, 10, 20));
            pool.add(session(room, "s2", 60, 21, 5, 20));
        }
        Series groups = plot(estimated(pool, Map.of()), "calibration").series().get(1);

        assertThat(groups.x()).hasSize(6);
        assertThat(groups.y()).containsExactly(25.0, 25.0, 25.0, 50.0, 50.0, 50.0);
        for (int i = 0; i < 6; i++) {
            assertThat(groups.x().get(i)).isCloseTo(groups.y().get(i), within(1e-6));
        }
    }

    @Test
    void leavesOutATemperatureThatCannotBeToldApart() {
        List<Held> pool = new ArrayList<>();
        for (String room : List.of("a", "b", "c")) {
            pool.add(session(room, "s1", 40, 21, 12, 20));
            pool.add(session(room, "s2", 60, 21, 9, 20));
        }
        Estimated answer = estimated(pool, Map.of());

        assertThat(answer.parameters()).containsEntry("temperature", "ignored");
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Temperature was left out"));
        // 2 x 2 table of rooms alike: odds (9/11)/(12/8) over 20 %RH
        assertThat(estimate(answer, "humidity").value() * 2).isCloseTo(Math.log(9.0 / 11 / (12.0 / 8)), within(1e-8));
    }

    /** A session sd of 1.2 on the log odds with 60 attempts is many times what luck gives. */
    @Test
    void saysWhenSessionsDifferBeyondLuck() {
        Estimated answer = estimated(drawn(12, 5, 60, -0.3, 1.2, 8), Map.of());

        assertThat(answer.warnings()).anyMatch(warning -> warning.contains("Pearson") && warning.contains("Remedy"));
    }

    @Test
    void saysWhatWasLeftOut() {
        List<Held> pool = new ArrayList<>(drawn(6, 4, 30, -0.4, 0, 5));
        List<Trial> odd = List.of(
                new TrialDraft(Kind.REBOUND, 1).climate(21, 50).build(),
                new TrialDraft(Kind.REBOUND, 2).made(Made.YES).build(),
                new TrialDraft(Kind.REBOUND, 3)
                        .shot("other")
                        .climate(21, 50)
                        .made(Made.NO)
                        .build());
        pool.add(new Held(new SessionDraft("room-9", "s9").build(), odd));
        Estimated answer = estimated(pool, Map.of());

        assertThat(answer.warnings())
                .anyMatch(warning -> warning.startsWith("1 attempt left out: not stated"))
                .anyMatch(warning -> warning.startsWith("1 attempt left out: humidity"))
                .anyMatch(warning -> warning.startsWith("Shot test-shot was taken") && warning.contains("other"));
        assertThat(answer.fit()).containsEntry("rooms", 6);
    }

    @Test
    void declinesWithARemedy() {
        assertThat(declined(List.of(session("a", "s", 40, 21, 3, 3)), Map.of()))
                .satisfies(none -> assertThat(none.reason()).isEqualTo(Reason.DEGENERATE))
                .satisfies(none -> assertThat(none.detail()).startsWith("All of 3 attempts"));
        assertThat(declined(List.of(session("a", "s", 40, 21, 0, 3)), Map.of()).detail())
                .startsWith("None of 3 attempts");
        assertThat(declined(List.of(session("a", "s", 40, 21, 2, 3)), Map.of()).detail())
                .startsWith("One room");
        assertThat(declined(List.of(session("a", "s", 40, 21, 2, 3), session("b", "s", 60, 21, 2, 3)), Map.of())
                        .detail())
                .startsWith("2 sessions for 2 coefficients");
        assertThat(declined(herds(), Map.of("shot", "none-such")).detail()).contains("none-such", "test-shot");
        List<Trial> silent =
                List.of(new TrialDraft(Kind.REBOUND, 1).climate(21, 50).build());
        assertThat(declined(List.of(new Held(new SessionDraft("a", "s").build(), silent)), Map.of())
                        .detail())
                .contains("fill in the column made");
        List<Trial> dry = List.of(new TrialDraft(Kind.REBOUND, 1).made(Made.YES).build());
        assertThat(declined(List.of(new Held(new SessionDraft("a", "s").build(), dry)), Map.of())
                        .detail())
                .contains("log the climate");
    }

    @Test
    void declinesWhatTheClimateCannotExplain() {
        List<Held> same = List.of(
                session("a", "s1", 50, 21, 2, 9),
                session("a", "s2", 50, 22, 3, 9),
                session("b", "s1", 50, 23, 4, 9),
                session("b", "s2", 50, 21, 4, 9));
        assertThat(declined(same, Map.of()).detail()).startsWith("Humidity does not vary enough");
        List<Held> parted = List.of(
                session("a", "s1", 30, 21, 9, 9),
                session("a", "s2", 60, 21, 0, 9),
                session("b", "s1", 35, 21, 9, 9),
                session("b", "s2", 70, 21, 0, 9));
        assertThat(declined(parted, Map.of()).detail()).contains("no finite slope");
    }

    @Test
    void namesABadParameter() {
        assertThatThrownBy(() -> estimated(herds(), Map.of("quadrature_points", "51")))
                .hasMessageContaining("quadrature_points = 51 is outside 1 to 50");
        assertThatThrownBy(() -> estimated(herds(), Map.of("quadrature_points", "2.5")))
                .hasMessageContaining("whole number");
        assertThatThrownBy(() -> estimated(herds(), Map.of("curve_from_pct", "60", "curve_to_pct", "40")))
                .hasMessageContaining("is not below");
        assertThatThrownBy(() -> estimated(herds(), Map.of("curve_from_pct", "99")))
                .hasMessageContaining("set both");
    }

    @Test
    void drawsNoFurtherThanAsked() {
        Estimated answer =
                estimated(drawn(12, 4, 30, -0.4, 0, 5), Map.of("curve_from_pct", "10", "curve_to_pct", "90"));

        assertThat(answer.curve().get(0).rhPct()).isEqualTo(10);
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("The curve reaches beyond the data"));
    }
}
