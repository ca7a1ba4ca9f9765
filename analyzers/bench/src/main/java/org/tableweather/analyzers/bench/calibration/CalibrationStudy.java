package org.tableweather.analyzers.bench.calibration;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;
import org.tableweather.analyzers.bench.calibration.Judgement.Way;

/** Draws pools from a stated truth and counts how often each way's 95 % interval holds it. */
public final class CalibrationStudy {

    private static final long SEED = 20_240_611;

    private final PoolDesign design;
    private final List<Judgement> judgements;

    private CalibrationStudy(PoolDesign design, List<Judgement> judgements) {
        this.design = design;
        this.judgements = judgements;
    }

    /** Pool number i is drawn from a seed of its own, so the counts do not depend on the threads. */
    static CalibrationStudy of(PoolDesign design, int pools, long seed) {
        List<Judgement> judgements = LongStream.range(0, pools)
                .parallel()
                .mapToObj(i -> Judgement.of(design, seed * 1_000_003 + i))
                .toList();
        return new CalibrationStudy(design, judgements);
    }

    /** Share of the pools in which a way's interval of the slope misses the truth. */
    double missed(Way way) {
        return share(judgement -> judgement.isJudged(way), judgement -> judgement.slopeHeld(way) ? 0 : 1);
    }

    /** Coverage of the band of a new room's curve. */
    double newRoomHeld() {
        return share(judgement -> judgement.isJudged(Way.DEFAULT), Judgement::newRoomHeld);
    }

    /** Coverage of the band of the mean. */
    double meanHeld() {
        return share(judgement -> judgement.isJudged(Way.DEFAULT), Judgement::meanHeld);
    }

    private double share(Predicate<Judgement> counted, ToDoubleFunction<Judgement> held) {
        return judgements.stream().filter(counted).mapToDouble(held).average().orElse(Double.NaN);
    }

    private String table() {
        StringBuilder text = new StringBuilder();
        text.append(String.format(
                Locale.ROOT,
                "%n### %d rooms, %d sessions each, %d trials each, room slope sd %s, true slope %s: %d pools, %.0f %% with a"
                        + " variance at its bound%n%n| slope by | interval holds the truth, %% | a true null rejected, %% |"
                        + " without an interval |%n| --- | --- | --- | --- |%n",
                design.rooms(),
                design.sessions(),
                design.trials(),
                design.slopeDeviation(),
                design.slope(),
                judgements.size(),
                100 * share(all -> true, judgement -> judgement.singular() ? 1 : 0)));
        for (Way way : Way.values()) {
            long none = judgements.stream()
                    .filter(judgement -> !judgement.isJudged(way))
                    .count();
            double missed = 100 * missed(way);
            text.append(
                    String.format(Locale.ROOT, "| %s | %.1f | %.1f | %d |%n", way.words, 100 - missed, missed, none));
        }
        return text.append(String.format(
                        Locale.ROOT,
                        "%nBands at 35, 50 and 65 %%RH: mean %.1f %%, a new room's curve %.1f %%.%n",
                        100 * meanHeld(),
                        100 * newRoomHeld()))
                .append(Workings.inWords(judgements.stream()
                        .flatMap(judgement -> judgement.workings().stream())
                        .toList()))
                .toString();
    }

    /**
     * Runs the study.
     *
     * @param arguments the number of pools for each design, 2000 when not given
     */
    public static void main(String[] arguments) {
        int pools = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2000;
        System.out.printf(
                Locale.ROOT,
                "Seed %d. Monte-Carlo standard error of a rate of 5 %%: %.2f %%.%n",
                SEED,
                100 * Math.sqrt(0.05 * 0.95 / pools));
        int design = 0;
        for (int[] size : new int[][] {{8, 4}, {30, 6}}) {
            for (double slopeDeviation : new double[] {0, 0.25}) {
                PoolDesign drawn = new PoolDesign(size[0], size[1], 20, slopeDeviation == 0 ? 0 : -0.8, slopeDeviation);
                System.out.print(of(drawn, pools, SEED + design++).table());
            }
        }
    }
}
