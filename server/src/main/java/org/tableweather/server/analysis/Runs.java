package org.tableweather.server.analysis;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Analyses that are made once, kept, and can be made again on the very sessions that went in. */
@ApplicationScoped
class Runs {
    private static final Logger LOG = Logger.getLogger(Runs.class);
    private static final long ANSWERS_BYTES = 64L << 20;
    private static final String ENDED = "the server was ended before it was made: POST to %s/rerun starts it again";

    private final Analyses analyses;
    private final StoredRuns runs;
    private final StoredAttempts attempts;
    private final RunQueue queue;
    private final RunEvents events;
    private final KeptRuns kept;
    private final Clock clock;
    private final AnswerCache answers = new AnswerCache(ANSWERS_BYTES);
    private final Map<String, RunJob> active = new ConcurrentHashMap<>();

    Runs(
            Analyses analyses,
            StoredRuns runs,
            StoredAttempts attempts,
            RunQueue queue,
            RunEvents events,
            KeptRuns kept,
            Clock clock) {
        this.analyses = analyses;
        this.runs = runs;
        this.attempts = attempts;
        this.queue = queue;
        this.events = events;
        this.kept = kept;
        this.clock = clock;
    }

    void onStart(@Observes StartupEvent event) {
        int interrupted = attempts.interruptAll(ENDED.formatted("/api/v1/runs/{id}"), Instant.now(clock));
        if (interrupted > 0) {
            LOG.infof("%d analyses were not made before the last end: they are interrupted", interrupted);
        }
        kept.forget();
    }

    /**
     * Asks an analyzer about what is published now: the kept answer, or one that is on its way.
     *
     * @throws Refusal for an unknown analyzer, parameter or value, or when too many wait
     */
    RunView ask(RunRequest request, RunCaller caller) {
        RunInputs inputs = analyses.inputs(request.analyzer(), request.parameters());
        return runs.view(inputs.id())
                .filter(known -> known.result().isPresent())
                .orElseGet(() -> start(inputs, caller));
    }

    /**
     * The answer over what is published now: at once when it was asked for lately or is kept, else made in its turn.
     *
     * @throws Refusal for an unknown analyzer, parameter or value, or when too many wait
     */
    Answer answer(String analyzer, Map<String, String> parameters, RunCaller caller) {
        String hash = analyses.datasetHash();
        String name = analyses.name(analyzer, parameters, hash);
        Answer answer = answers.get(
                name,
                () -> runs.result(name)
                        .map(Answer::kept)
                        .orElseGet(() -> Answer.of(queue.inTurn(() -> analyses.run(analyzer, parameters), caller))));
        if (!hash.equals(answer.run().dataset().hash())) {
            // something was published or withdrawn while it was made
            answers.forget(name);
        }
        return answer;
    }

    /**
     * Makes a run again, on the sessions that were recorded with it.
     *
     * @throws Refusal when the analyzer has changed, or sessions were withdrawn, or too many wait
     */
    RunView again(String id, RunCaller caller) {
        RunInputs inputs = inputs(id);
        analyses.mustBePossible(inputs);
        return start(inputs, caller);
    }

    private synchronized RunView start(RunInputs inputs, RunCaller caller) {
        Optional<RunView> known = runs.view(inputs.id());
        if (known.isPresent() && known.get().isActive()) {
            return known.get();
        }
        queue.takePlace(caller);
        RunJob job = recorded(inputs, caller);
        active.put(inputs.id(), job);
        queue.put(job, caller);
        kept.forget();
        return one(inputs.id());
    }

    private RunJob recorded(RunInputs inputs, RunCaller caller) {
        try {
            runs.add(inputs, caller.account(), Instant.now(clock));
            int number = attempts.add(inputs.id(), caller.account(), Instant.now(clock));
            return new RunJob(inputs, number, caller, analyses, attempts, clock, () -> changed(inputs.id()));
        } catch (RuntimeException e) {
            queue.givePlaceBack(caller);
            throw e;
        }
    }

    /**
     * Gives up the attempt that waits or is being made; a kept result stays.
     *
     * @throws Refusal when there is none, or it was started with a token that is not the caller's
     */
    synchronized RunView cancel(String id, RunCaller caller) {
        RunView run = one(id);
        RunJob job = active.get(id);
        if (run.isActive()
                && !caller.mayCancel(attempts.starter(id, run.latest().number()))) {
            throw new Refusal(
                    caller.token().isPresent() ? ErrorCode.NOT_YOURS : ErrorCode.NOT_AUTHENTICATED,
                    "run " + id
                            + " was started with a token: whoever started it, a curator or an operator may cancel it");
        }
        boolean ended = run.isActive()
                && attempts.end(
                        id, run.latest().number(), AttemptState.CANCELLED, "cancelled on request", Instant.now(clock));
        if (!ended) {
            throw new Refusal(
                    ErrorCode.WRONG_STATE,
                    "run " + id + " is " + run.latest().state().schemaName()
                            + ": only one that is queued or running can be cancelled");
        }
        if (job != null) {
            job.cancel();
            queue.remove(job, job.caller());
        }
        changed(id);
        return one(id);
    }

    private void changed(String id) {
        RunView run = one(id);
        if (!run.isActive()) {
            active.computeIfPresent(
                    id, (key, job) -> job.number() <= run.latest().number() ? null : job);
        }
        if (events.isWatched(id)) {
            events.tell(run);
        }
    }

    /** A run as it stands now; refused when there is none of this id. */
    RunView one(String id) {
        RunView run = runs.view(id).orElseThrow(() -> unknown(id));
        return Optional.ofNullable(active.get(id))
                .flatMap(RunJob::progress)
                .filter(progress -> run.isActive())
                .map(run::with)
                .orElse(run);
    }

    /** What goes into a run; refused when there is none of this id. */
    RunInputs inputs(String id) {
        return runs.inputs(id).orElseThrow(() -> unknown(id));
    }

    /** The kept bytes; refused while there are none. */
    byte[] result(String id) {
        return runs.result(id).orElseThrow(() -> {
            AttemptView latest = one(id).latest();
            return new Refusal(
                    ErrorCode.WRONG_STATE,
                    "run " + id + " has no result, it is " + latest.state().schemaName()
                            + latest.failure().map(why -> " (" + why + ")").orElse("") + ": ask "
                            + RunView.path(id) + " until it is done, or POST to its /rerun");
        });
    }

    /** Which of a run's sessions are no longer published. */
    List<String> withdrawn(RunInputs inputs) {
        return analyses.notPublished(inputs.digests());
    }

    private static Refusal unknown(String id) {
        return new Refusal(
                ErrorCode.NOT_FOUND, "run " + id + " does not exist: POST /api/v1/analyses starts one and names it");
    }
}
