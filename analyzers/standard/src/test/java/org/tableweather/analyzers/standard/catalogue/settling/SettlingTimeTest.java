package org.tableweather.analyzers.standard.catalogue.settling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.SessionDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

class SettlingTimeTest extends AnalyzerContract<SettlingSummary> {

    private static final String SET = "2026-02-03T08:00:00+01:00";
    private static final double TAU = 3;

    @Override
    protected Analyzer<SettlingSummary> analyzer() {
        return new SettlingTime();
    }

    @Override
    protected List<Example> examples() {
        return steps(4, 24, 0.4, 2, 9).stream()
                .map(held -> new Example(held.session(), held.trials()))
                .toList();
    }

    /** One step in each room, an attempt every half hour from a quarter on, settling with 3 h from 32 degrees plus the change. */
    private static List<Held> steps(int rooms, int attempts, double scatter, double change, long seed) {
        Random random = new Random(seed);
        List<Held> steps = new ArrayList<>();
        for (int room = 0; room < rooms; room++) {
            List<Trial> trials = new ArrayList<>();
            for (int i = 0; i < attempts; i++) {
                double hours = 0.25 + 0.5 * i;
                double angle = 30 + room + change * Math.exp(-hours / TAU) + scatter * random.nextGaussian();
                trials.add(attempt(i + 1, hours, angle));
            }
            steps.add(new Held(session("room-" + room, "s"), trials));
        }
        return steps;
    }

    private static Trial attempt(int number, double hours, double angle) {
        return new TrialDraft(Kind.KICK, number)
                .climate(21, 60)
                .at(OffsetDateTime.parse(SET).toInstant().plusSeconds(Math.round(3600 * hours)))
                .with(TrialDraft.Column.FINAL_REBOUND_ANGLE_DEG, angle)
                .build();
    }

    private static SessionRecord session(String room, String session) {
        return new SessionDraft(room, session).settled(SET).build();
    }

    private static Analysis analysed(List<Held> pool, Map<String, String> set) {
        return Held.analysed(new SettlingTime(), pool, set);
    }

    private static Declined declined(List<Held> pool, Map<String, String> set) {
        Analysis analysis = analysed(pool, set);
        assertThat(analysis).isInstanceOf(Declined.class);
        return (Declined) analysis;
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Four standard errors: missed once in 16,000 draws. */
    @Test
    void recoversTheTimeConstant() {
        Estimated answer = (Estimated) analysed(steps(8, 30, 0.3, 2, 5), Map.of());

        Estimate tau = estimate(answer, "time.constant");
        assertThat(tau.value()).isCloseTo(TAU, within(4 * tau.standardError()));
        // 2.9957 time constants to 95 %, from the exponential
        Estimate settled = estimate(answer, "settled");
        assertThat(settled.value() / tau.value()).isCloseTo(2.9957, within(5e-5));
        assertThat(settled.lower() / tau.lower()).isCloseTo(2.9957, within(5e-5));
        assertThat(answer.sentence())
                .startsWith("The final rebound angle is 95 % settled ")
                .contains("8 steps", "8 rooms");
        assertThat(answer.plots()).singleElement().satisfies(plot -> {
            List<Plot.Series> points = plot.series().stream()
                    .filter(series -> series.mark() == Plot.Mark.POINTS)
                    .toList();
            assertThat(plot.series()).hasSize(2 * points.size());
            assertThat(points).hasSizeBetween(1, 2);
            assertThat(points.stream().mapToInt(series -> series.x().size()).sum())
                    .isEqualTo(8 * 30);
        });
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Invented data"));
    }

    @Test
    void takesTheShareThatIsAskedFor() {
        Estimated answer = (Estimated) analysed(steps(8, 30, 0.3, 2, 5), Map.of("share_pct", "63.2120559"));

        assertThat(estimate(answer, "settled").value())
                .isCloseTo(estimate(answer, "time.constant").value(), within(1e-6));
        assertThatThrownBy(() -> analysed(List.of(), Map.of("share_pct", "100")))
                .hasMessageContaining("share_pct = 100 is not between 0 and 100 %");
    }

    /** Two sessions of one table in one climate are one step, in whatever pieces it was written down. */
    @Test
    void joinsTheSessionsOfOneStep() {
        List<Held> whole = steps(3, 24, 0.3, 2, 7);
        List<Held> pieces = new ArrayList<>();
        for (Held held : whole) {
            pieces.add(new Held(
                    session(held.session().roomKey(), "s1"), held.trials().subList(0, 10)));
            pieces.add(new Held(
                    session(held.session().roomKey(), "s2"), held.trials().subList(10, 24)));
        }

        Estimated one = (Estimated) analysed(whole, Map.of());
        Estimated two = (Estimated) analysed(pieces, Map.of());

        assertThat(two.estimates()).isEqualTo(one.estimates());
        assertThat(two.fit()).containsEntry("steps", 3);
    }

    @Test
    void warnsOfOneStepAndOfALateBeginning() {
        List<Held> late = new ArrayList<>();
        for (Held held : steps(1, 60, 0.05, 3, 3)) {
            late.add(new Held(held.session(), held.trials().subList(5, 60)));
        }

        Estimated answer = (Estimated) analysed(late, Map.of());

        assertThat(answer.warnings())
                .anyMatch(warning -> warning.startsWith("One step of the climate"))
                .anyMatch(warning -> warning.startsWith("The first attempt came 2.8 h after the step"));
    }

    @Test
    void leavesOutAttemptsWithoutATime() {
        List<Held> pool = new ArrayList<>();
        for (Held held : steps(4, 24, 0.3, 2, 9)) {
            List<Trial> trials = new ArrayList<>(held.trials());
            trials.add(new TrialDraft(Kind.KICK, 25)
                    .with(TrialDraft.Column.FINAL_REBOUND_ANGLE_DEG, 80)
                    .build());
            trials.add(attempt(26, -1, 80));
            pool.add(new Held(held.session(), trials));
        }

        Estimated answer = (Estimated) analysed(pool, Map.of());

        assertThat(answer.fit()).containsEntry("trials", 96L);
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("8 trials left out: no started_at"));
    }

    @Test
    void declinesKindly() {
        assertThat(declined(List.of(), Map.of()).detail()).startsWith("There are no trials");
        List<Held> three = steps(1, 3, 0.3, 2, 9);
        assertThat(declined(three, Map.of()).reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
        assertThat(declined(three, Map.of()).detail()).contains("add attempts at other times");
        assertThat(declined(steps(2, 2, 0.3, 2, 9), Map.of()).detail()).contains("fewer than 3 times");
        assertThat(declined(steps(2, 9, 0.3, 2, 9), Map.of("response", "run_out_m"))
                        .detail())
                .contains("No timed trial", "run_out_m");
        List<Held> unset = steps(2, 9, 0.3, 2, 9).stream()
                .map(held -> new Held(new SessionDraft("r", "s").build(), held.trials()))
                .toList();
        assertThat(declined(unset, Map.of()).detail()).contains("settledFrom");
    }

    @Test
    void declinesWhatHasSettledAlready() {
        Declined none = declined(steps(3, 20, 0.4, 0, 2), Map.of());

        assertThat(none.reason()).isEqualTo(Reason.DEGENERATE);
        assertThat(none.detail()).contains("does not change with time more than its scatter");
    }

    /** A sixth of a time constant is nearly a straight line: only a lower bound can be told. */
    @Test
    void declinesWhatStillGoesOn() {
        List<Held> early = new ArrayList<>();
        Random random = new Random(6);
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double hours = 0.0125 * (i + 1);
            trials.add(attempt(i + 1, hours, 30 + 20 * Math.exp(-hours / TAU) + 0.3 * random.nextGaussian()));
        }
        early.add(new Held(session("r", "s"), trials));

        assertThat(declined(early, Map.of()).detail()).contains("no upper bound can be told", "go on for longer");
    }

    /** Attempts from the twentieth time constant on, and one at its beginning: the first falls between them. */
    @Test
    void declinesWhatFellBetweenTheFirstAttempts() {
        Random random = new Random(6);
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            trials.add(attempt(i + 1, 0, 32 + 0.1 * random.nextGaussian()));
        }
        for (int i = 4; i < 30; i++) {
            trials.add(attempt(i + 1, 60 + i, 30 + 0.1 * random.nextGaussian()));
        }

        assertThat(declined(List.of(new Held(session("r", "s"), trials)), Map.of())
                        .detail())
                .contains("had settled between the first attempts", "shoot sooner");
    }
}
