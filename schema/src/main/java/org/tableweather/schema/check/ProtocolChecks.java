package org.tableweather.schema.check;

import java.util.List;

/** Rules of how sessions are shot and written down. */
public final class ProtocolChecks {
    private static final CheckGroup GROUP = new CheckGroup("protocol");

    public static final Check EVERY_ATTEMPT = GROUP.warn(
            "every-attempt-logged",
            "Every attempt is logged, made or missed.",
            "everyAttemptLogged: true",
            "log all attempts; attempts left out bias the mean",
            "CommonPractice");

    public static final Check EVERY_ATTEMPT_UNSTATED = GROUP.note(
            "every-attempt-unstated",
            "A session says whether every attempt was logged.",
            "everyAttemptLogged",
            "add \"everyAttemptLogged\": true if it is so",
            "CommonPractice");

    public static final Check ONLY_MADE = GROUP.warn(
            "only-made",
            "Long sessions have misses.",
            "at least one miss among 20 banks or kicks",
            "log the misses also",
            "CommonPractice");

    public static final Check TRIAL_GAP = GROUP.warn(
            "trial-gap",
            "Numbered trials of a session have no gaps.",
            "each number from the first to the last",
            "log the missing attempts, or say in a note what became of them",
            "CommonPractice");

    public static final Check ORDER_FIXED = GROUP.warn(
            "order-fixed",
            "The order of the shots is drawn by lot.",
            "orderRandomised: true",
            "draw the order by lot, so that learning and drift do not follow one shot",
            "CommonPractice");

    public static final Check ORDER_UNSTATED = GROUP.note(
            "order-unstated",
            "A session of several shots says whether their order was drawn by lot.",
            "orderRandomised",
            "add \"orderRandomised\": true or false",
            "CommonPractice");

    public static final Check ORDER_BLOCKED = GROUP.warn(
            "order-blocked",
            "An order drawn by lot mixes the shots.",
            "more runs of equal shots than shots",
            "draw the order for each attempt, or write \"orderRandomised\": false",
            "CommonPractice");

    public static final Check SETTLED_AFTER = GROUP.refuse(
            "settled-after-start",
            "The climate is held from before the first attempt.",
            "settledFrom not after startedAt",
            "correct one of the two times",
            "CommonPractice");

    public static final Check SETTLED_SHORT = GROUP.warn(
            "settled-short",
            "Cloth and cushions have time to settle in the held climate.",
            "at least 2 h from settledFrom to startedAt",
            "hold the climate longer before the first attempt",
            "CommonPractice");

    public static final Check SETTLED_UNSTATED = GROUP.note(
            "settled-unstated",
            "A session says since when its climate was held.",
            "settledFrom and startedAt",
            "add both times",
            "CommonPractice");

    public static final Check FEW_TRIALS = GROUP.warn(
            "few-trials",
            "A session has enough trials to tell its scatter.",
            "at least 5 trials of a shot",
            "shoot more attempts of each shot in a session",
            "CommonPractice");

    public static final Check OUTCOME_MISSING = GROUP.warn(
            "outcome-missing",
            "A trial has an outcome of its kind.",
            "one of the kind's outcomes",
            "fill in what was observed, if anything was; a lost attempt is kept as it is",
            "Tableweather10");

    public static final Check APPROACH_UNKNOWN = GROUP.note(
            "approach-unknown",
            "A rebound's angle of approach is known.",
            "approach_angle_deg of the trial, or approachAngleDeg of its shot",
            "measure it, or use a shot of the catalogue",
            "CommonPractice");

    public static final Check KIND_DIFFERS = GROUP.warn(
            "kind-differs",
            "A trial is of its shot's kind.",
            "kind of the shot",
            "correct kind or shot",
            "Tableweather10");

    public static final Check OUTSIDE_SESSION = GROUP.warn(
            "outside-session",
            "Trials are shot during their session.",
            "from 1 h before startedAt of the session until 24 h after it",
            "correct the time, or its zone",
            "CommonPractice");

    public static final Check NOT_BLINDED = GROUP.note(
            "not-blinded",
            "The person who marks the outcome does not know the climate.",
            "blinded: true",
            "let someone mark who does not see the hygrometer",
            "CommonPractice");

    public static final Check NO_WARM_UP = GROUP.note(
            "no-warm-up",
            "The first attempts of a session warm up balls, cloth and player, and are not logged as data.",
            "at least 1 warm-up attempt",
            "shoot some attempts first, and write how many in warmUpTrials",
            "CommonPractice");

    public static final Check TIMES_DISORDERED = GROUP.warn(
            "times-disordered",
            "Numbered trials follow each other in time.",
            "started_at does not go back from one number to the next",
            "correct the times, or number the attempts in the order in which they were shot",
            "CommonPractice");

    public static final Check LONG_SESSION = GROUP.warn(
            "long-session",
            "A session is one visit.",
            "at most 10 h from its first attempt to its last",
            "split the session by visit",
            "CommonPractice");

    public static final Check DELIVERY_DIFFERS = GROUP.warn(
            "delivery-differs",
            "A session delivers the ball as its shots say.",
            "delivery of the shot",
            "correct delivery, or choose the shot for it",
            "Tableweather10");

    public static final Check SESSIONS_AT_ONCE = GROUP.warn(
            "sessions-at-once",
            "A table holds one session at a time.",
            "sessions of one table that start at different times",
            "correct startedAt, or join the two sessions",
            "Tableweather10");

    private ProtocolChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }
}
