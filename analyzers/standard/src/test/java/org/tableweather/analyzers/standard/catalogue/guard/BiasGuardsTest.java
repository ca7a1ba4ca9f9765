package org.tableweather.analyzers.standard.catalogue.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

class BiasGuardsTest {

    private static final GoldenFile GOLDEN = GoldenFile.read("kind/guards.properties");
    private static final int POOLS = 4000;

    private static List<GuardFinding> found(List<GuardedSession> pool) {
        return BiasGuards.of(pool, "test-shot", "hop_height_mm");
    }

    private static List<Guard> struck(List<GuardedSession> pool) {
        return found(pool).stream().map(GuardFinding::guard).toList();
    }

    private static Map<Guard, Double> rates(GuardedDraws draws, int pools) {
        Map<Guard, Double> rates = new EnumMap<>(Guard.class);
        for (int i = 0; i < pools; i++) {
            struck(draws.pool()).forEach(guard -> rates.merge(guard, 1.0 / pools, Double::sum));
        }
        return rates;
    }

    /**
     * Sound pools, 4,000 draws from one seed: drift and order strike at their 1 % (four Monte Carlo standard errors: 0.63 %),
     * the shape likewise or less, the others never.
     */
    @Test
    void strikesSoundPoolsAsOftenAsItSays() {
        Map<Guard, Double> rates = rates(new GuardedDraws(20260201), POOLS);

        assertThat(rates.getOrDefault(Guard.DRIFT_WITHIN_SESSIONS, 0.0)).isCloseTo(0.01, within(0.0063));
        assertThat(rates.getOrDefault(Guard.ORDER_OF_SESSIONS, 0.0)).isCloseTo(0.01, within(0.0063));
        assertThat(rates.getOrDefault(Guard.CUT_ON_ONE_SIDE, 0.0)).isLessThan(0.01 + 0.0063);
        assertThat(rates.getOrDefault(Guard.CUT_ON_BOTH_SIDES, 0.0)).isLessThan(0.01 + 0.0063);
        assertThat(rates.keySet())
                .doesNotContain(
                        Guard.CLIMATE_WITH_TIME,
                        Guard.CLIMATE_WITH_SHOOTER,
                        Guard.MISSING_NUMBERS,
                        Guard.MADE_TOO_OFTEN,
                        Guard.LEFT_OUT);
    }

    @Test
    void seesScatterThatIsCutOffOnBothSides() {
        GuardedDraws draws = new GuardedDraws(2);
        draws.kept = deviation -> Math.abs(deviation) < 1;

        assertThat(rates(draws, 100).get(Guard.CUT_ON_BOTH_SIDES)).isGreaterThan(0.75);
    }

    @Test
    void seesScatterThatIsCutOffOnOneSide() {
        GuardedDraws draws = new GuardedDraws(3);
        draws.kept = deviation -> deviation > -0.5;

        Map<Guard, Double> rates = rates(draws, 100);

        assertThat(rates.get(Guard.CUT_ON_ONE_SIDE)).isGreaterThan(0.8);
        assertThat(found(draws.pool()))
                .filteredOn(finding -> finding.guard() == Guard.CUT_ON_ONE_SIDE)
                .allSatisfy(
                        finding -> assertThat(finding.words()).contains("ends sooner below", "Remedy: ask whether"));
    }

    @Test
    void seesDriftWithinSessions() {
        GuardedDraws draws = new GuardedDraws(4);
        draws.drift = 0.1;

        assertThat(rates(draws, 100).get(Guard.DRIFT_WITHIN_SESSIONS)).isGreaterThan(0.9);
    }

    @Test
    void seesWearFromSessionToSession() {
        GuardedDraws draws = new GuardedDraws(5);
        draws.wear = 0.4;

        assertThat(rates(draws, 100).get(Guard.ORDER_OF_SESSIONS)).isGreaterThan(0.9);
    }

    /** Dry to damp in every room: what is mixed up is reported always. */
    @Test
    void seesClimateThatGoesWithTime() {
        GuardedDraws draws = new GuardedDraws(6);
        draws.ascending = true;

        List<GuardFinding> found = found(draws.pool());

        assertThat(found)
                .filteredOn(finding -> finding.guard() == Guard.CLIMATE_WITH_TIME)
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.statistic()).isGreaterThan(finding.bound());
                    assertThat(finding.facts()).containsEntry("guard", "climate-with-time");
                });
    }

    @Test
    void seesClimateThatGoesWithTheShooter() {
        GuardedDraws draws = new GuardedDraws(7);
        draws.shooter = rhPct -> rhPct < 46 ? "dry hand" : rhPct < 55 ? "middle hand" : "damp hand";

        assertThat(struck(draws.pool())).contains(Guard.CLIMATE_WITH_SHOOTER);
    }

    /** Two deliveries in each room, each at its own climates; a room of one delivery tells nothing. */
    @Test
    void seesClimateThatGoesWithTheDelivery() {
        List<GuardedSession> pool = new ArrayList<>();
        for (int session = 0; session < 6; session++) {
            pool.add(delivered("mixed", session, session < 3 ? "ramp" : "cue"));
            pool.add(delivered("plain", session, "cue"));
        }

        assertThat(struck(pool)).contains(Guard.CLIMATE_WITH_DELIVERY);
        assertThat(struck(pool.stream()
                        .filter(session -> session.room().equals("plain"))
                        .toList()))
                .doesNotContain(Guard.CLIMATE_WITH_DELIVERY);
    }

    private static GuardedSession delivered(String room, int number, String delivery) {
        List<Trial> trials = new ArrayList<>();
        for (int trial = 1; trial <= 5; trial++) {
            trials.add(new TrialDraft(Kind.HOP, trial)
                    .climate(21, (number < 3 ? 35 : 60) + number)
                    .with(TrialDraft.Column.HOP_HEIGHT_MM, 20 + (7 * trial + number) % 3)
                    .build());
        }
        return GuardedDraws.guarded(
                new SessionDraft(room, "s" + number).delivery(delivery).build(), trials);
    }

    /** A drift without any scatter is reported with a finite statistic. */
    @Test
    void staysFiniteWithoutScatter() {
        List<Trial> trials = new ArrayList<>();
        for (int trial = 1; trial <= 12; trial++) {
            trials.add(new TrialDraft(Kind.HOP, trial)
                    .climate(21, 50)
                    .with(TrialDraft.Column.HOP_HEIGHT_MM, trial)
                    .build());
        }

        assertThat(found(List.of(GuardedDraws.guarded(new SessionDraft("r", "s").build(), trials))))
                .filteredOn(finding -> finding.guard() == Guard.DRIFT_WITHIN_SESSIONS)
                .singleElement()
                .satisfies(finding -> assertThat(finding.statistic()).isFinite().isGreaterThan(finding.bound()));
    }

    @Test
    void seesMissingNumbersAndStatedGaps() {
        List<Trial> trials = new ArrayList<>();
        for (int number : new int[] {1, 2, 5, 6, 9}) {
            trials.add(new TrialDraft(Kind.HOP, number)
                    .with(TrialDraft.Column.HOP_HEIGHT_MM, number % 3)
                    .build());
        }
        GuardedSession session = GuardedDraws.guarded(
                new SessionDraft("r", "s").everyAttemptLogged(false).build(), trials);

        List<GuardFinding> found = found(List.of(session));

        assertThat(found).extracting(GuardFinding::guard).contains(Guard.LEFT_OUT, Guard.MISSING_NUMBERS);
        assertThat(found)
                .filteredOn(finding -> finding.guard() == Guard.MISSING_NUMBERS)
                .singleElement()
                .satisfies(finding -> assertThat(finding.statistic()).isEqualTo(4));
        assertThat(BiasGuards.withSources(List.of("Laird1982"), found)).containsExactly("Laird1982", "CommonPractice");
    }

    @Test
    void namesThatAreNoNumbersHaveNoGaps() {
        GuardedSession session = GuardedDraws.guarded(
                new SessionDraft("r", "s").build(),
                List.of(new TrialDraft(Kind.HOP, "a").build(), new TrialDraft(Kind.HOP, "20260112180501").build()));

        assertThat(found(List.of(session))).isEmpty();
        assertThat(session.protocol().numbering().numbered()).isZero();
    }

    @Test
    void seesThatNobodyMakesThemAll() {
        assertThat(struck(List.of(making(80, 0, "cue")))).containsExactly(Guard.MADE_TOO_OFTEN);
        assertThat(struck(List.of(making(60, 20, "cue")))).isEmpty();
        assertThat(struck(List.of(making(80, 0, "ramp")))).isEmpty();
    }

    private static GuardedSession making(int made, int missed, String delivery) {
        List<Trial> trials = new ArrayList<>();
        for (int number = 1; number <= made + missed; number++) {
            trials.add(new TrialDraft(Kind.BANK, number)
                    .made(number <= made ? Made.YES : Made.NO)
                    .build());
        }
        return GuardedDraws.guarded(
                new SessionDraft("r", "s").delivery(delivery).build(), trials);
    }

    @Test
    void boundsTheMakeRateAsPublishedSoftwareDoes() {
        assertThat(AttemptGuards.lowerRate(59, 0)).isCloseTo(GOLDEN.number("lower.59.59"), within(1e-9));
        assertThat(AttemptGuards.lowerRate(60, 1)).isCloseTo(GOLDEN.number("lower.60.61"), within(1e-9));
        assertThat(AttemptGuards.lowerRate(19, 1)).isCloseTo(GOLDEN.number("lower.19.20"), within(1e-9));
        assertThat(AttemptGuards.lowerRate(0, 7)).isEqualTo(GOLDEN.number("lower.0.7"));
    }

    @Test
    void everyGuardHasAnIdARemedyAndASource() {
        assertThat(Guard.values()).extracting(Guard::id).doesNotHaveDuplicates().allMatch(id -> id.matches("[a-z-]+"));
        assertThat(Guard.values()).allSatisfy(guard -> {
            assertThat(guard.remedy()).isNotBlank();
            assertThat(guard.source()).isNotBlank();
        });
    }
}
