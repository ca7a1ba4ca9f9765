package org.tableweather.analyzers.standard.catalogue.guard;

/**
 * What may have bent a pool without any single trial being wrong. Each has a statistic, a bound, a remedy, and the source of
 * the statistic; the bounds themselves are common practice.
 *
 * <p>False alarms among 4,000 sound pools of 30 sessions of 12 attempts ({@code BiasGuardsTest}, fixed seed): cut on both sides
 * 0.2 %, cut on one side 1.0 %, drift within sessions 0.8 %, order of sessions 1.0 %, the others none. In pools of this size,
 * scatter cut off beyond one standard deviation on both sides is seen in about nine of ten.
 */
public enum Guard {
    /** A session says itself that attempts are missing. Statistic: sessions; bound: 0. No false alarm by chance. */
    LEFT_OUT(
            "attempts-left-out",
            "log every attempt, made or missed, and shoot these sessions again if the left out ones are lost",
            "CommonPractice"),
    /** Numbers of attempts with gaps. Statistic: missing numbers; bound: 0. No false alarm by chance. */
    MISSING_NUMBERS(
            "missing-numbers",
            "add the attempts that these numbers belong to, or number the attempts anew if none was left out",
            "CommonPractice"),
    /**
     * Scatter cut off on both sides, as when attempts far from the usual are left out. Statistic: z of the pooled excess
     * kurtosis; bound: the normal distribution's 1 % point, −2.326.
     */
    CUT_ON_BOTH_SIDES(
            "cut-on-both-sides",
            "ask whether attempts far from the usual were left out, and log every attempt",
            "Fisher1930"),
    /**
     * Scatter cut off on one side, or skewed by its nature. Statistic: z of the pooled skewness; bound: the normal distribution's
     * two-sided 1 % point, 2.576.
     */
    CUT_ON_ONE_SIDE(
            "cut-on-one-side",
            "ask whether the poor attempts were left out, and log every attempt; an outcome that is skewed by its nature is no"
                    + " fault",
            "Fisher1930"),
    /**
     * Made too often to be all attempts. Statistic: lower end of the exact one-sided 97.5 % interval of the make rate with a
     * cue; bound: 0.95.
     */
    MADE_TOO_OFTEN("made-too-often", "log the misses also", "Clopper1934"),
    /**
     * The outcome drifts while a session lasts. Statistic: t of the slope over the attempt's place within sessions; bound: its
     * two-sided 1 % point.
     */
    DRIFT_WITHIN_SESSIONS(
            "drift-within-sessions",
            "warm up before the first logged attempt, draw the order of the shots by lot, and rest; then drift does not follow"
                    + " one shot",
            "Student1908"),
    /**
     * The outcome follows the order of the sessions of a room beside humidity. Statistic: t of the slope over that order
     * within rooms, humidity in the model; bound: its two-sided 1 % point.
     */
    ORDER_OF_SESSIONS(
            "order-of-sessions",
            "draw the order of the climates by lot in each room, so that wear and practice do not pass for humidity",
            "Student1908"),
    /**
     * Humidity goes with the order of the sessions. Statistic: variance inflation {@code 1/(1 − r²)} within rooms; bound: 5.
     * Not a matter of chance: what is mixed up is mixed up.
     */
    CLIMATE_WITH_TIME(
            "climate-with-time",
            "go back to an earlier climate at the end, or draw the order of the climates by lot",
            "CommonPractice"),
    /** Humidity goes with the shooter. Statistic: variance inflation within rooms; bound: 5. */
    CLIMATE_WITH_SHOOTER(
            "climate-with-shooter", "let the same person shoot at every climate of a room", "CommonPractice"),
    /** Humidity goes with ramp or cue. Statistic: variance inflation within rooms; bound: 5. */
    CLIMATE_WITH_DELIVERY(
            "climate-with-delivery", "use the same delivery at every climate of a room", "CommonPractice");

    private final String id;
    private final String remedy;
    private final String source;

    Guard(String id, String remedy, String source) {
        this.id = id;
        this.remedy = remedy;
        this.source = source;
    }

    /** Its name in results; never changed. */
    public String id() {
        return id;
    }

    /** What helps, in words. */
    public String remedy() {
        return remedy;
    }

    /** Key of {@code references.bib}: where the statistic comes from. */
    public String source() {
        return source;
    }
}
