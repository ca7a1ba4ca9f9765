package org.tableweather.analyzers.standard.plan;

import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;
import org.tableweather.analyzers.standard.statistics.power.RoomClaim;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;

/**
 * The chance of {@link PlanChance} by brute force: sessions' means are drawn, the slope is fitted and tested, and rejections are counted.
 *
 * @param chance share of rejections at 5 %
 * @param standardError of that share, {@code √(p(1 − p)/n)}
 * @param replicates n
 * @param seed of the draws
 */
public record PlanSimulation(double chance, double standardError, int replicates, long seed) {

    private static final double ALPHA = 0.05;

    /**
     * Simulates.
     *
     * @param plan the plan
     * @param scatter in the response's unit, the room slope's per 10 %RH
     * @param change from the driest climate to the dampest
     * @param claim which rooms the test speaks for; must leave a degree of freedom
     * @param replicates at least 1
     * @param seed any number
     */
    public static PlanSimulation of(
            StudyPlan plan, ScatterAssumption scatter, double change, RoomClaim claim, int replicates, long seed) {
        boolean general = claim == RoomClaim.ANY_ROOM;
        // a claim about these rooms alone takes their slopes for alike
        double roomSlopeSd = general ? scatter.roomSlopeSd() : 0;
        ScatterAssumption drawn = new ScatterAssumption(roomSlopeSd, scatter.sessionSd(), scatter.trialSd());
        Draw draw = new Draw(plan, drawn, 10 * change / plan.rangePct(), new Well19937c(seed));
        int rooms = plan.rooms();
        int df = general ? rooms - 1 : rooms * (plan.sessionsPerRoom() - 1) - 1;
        if (df < 1 || replicates < 1) {
            throw new IllegalArgumentException(
                    "degrees of freedom " + df + " and replicates " + replicates + " must be at least 1");
        }
        double bound = new TDistribution(df).inverseCumulativeProbability(1 - ALPHA / 2);
        int found = 0;
        for (int i = 0; i < replicates; i++) {
            found += Math.abs(draw.t(claim, df)) > bound ? 1 : 0;
        }
        double share = (double) found / replicates;
        return new PlanSimulation(share, Math.sqrt(share * (1 - share) / replicates), replicates, seed);
    }

    /** One replicate after another. */
    private static final class Draw {
        private final RandomGenerator chance;
        private final ScatterAssumption scatter;
        private final double slope;
        private final int rooms;
        private final int trials;
        private final double[] x;
        private final double spread;
        private final double[] slopes;
        private double residual;

        Draw(StudyPlan plan, ScatterAssumption scatter, double slope, RandomGenerator chance) {
            this.chance = chance;
            this.scatter = scatter;
            this.slope = slope;
            this.rooms = plan.rooms();
            this.trials = plan.attempts();
            this.slopes = new double[rooms];
            this.x = new double[plan.sessionsPerRoom()];
            double mean = plan.rhPct().stream().mapToDouble(h -> h).average().orElseThrow();
            for (int s = 0; s < x.length; s++) {
                x[s] = (plan.rhPct().get(s % plan.rhPct().size()) - mean) / 10;
            }
            double sum = 0;
            for (double setting : x) {
                sum += setting * setting;
            }
            this.spread = sum;
        }

        double t(RoomClaim claim, int df) {
            residual = 0;
            double sum = 0;
            for (int room = 0; room < rooms; room++) {
                slopes[room] = roomSlope();
                sum += slopes[room];
            }
            double mean = sum / rooms;
            double between = 0;
            for (double one : slopes) {
                between += (one - mean) * (one - mean);
            }
            double variance = claim == RoomClaim.ANY_ROOM
                    ? between / df / rooms
                    : (residual + spread * between) / df / (spread * rooms);
            return mean / Math.sqrt(variance);
        }

        /** The least-squares slope of one room's session means; what is left over goes to the residual. */
        private double roomSlope() {
            double own = slope + scatter.roomSlopeSd() * chance.nextGaussian();
            double[] y = new double[x.length];
            double sum = 0;
            for (int s = 0; s < x.length; s++) {
                y[s] = own * x[s]
                        + scatter.sessionSd() * chance.nextGaussian()
                        + scatter.trialSd() * chance.nextGaussian() / Math.sqrt(trials);
                sum += y[s];
            }
            double mean = sum / x.length;
            double product = 0;
            for (int s = 0; s < x.length; s++) {
                product += x[s] * (y[s] - mean);
            }
            double fitted = product / spread;
            for (int s = 0; s < x.length; s++) {
                double left = y[s] - mean - fitted * x[s];
                residual += left * left;
            }
            return fitted;
        }
    }
}
