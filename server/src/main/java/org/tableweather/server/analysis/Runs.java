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
    private static final String ENDED = "the server was ended before it was made: POST to %s/rerun starts it again";

    private final Analyses analyses;
    private final StoredRuns runs;
    private final StoredAttempts attempts;
    private final RunQueue queue;
    private final RunEvents events;
    private final Clock clock;
    private final Map<String, RunJob> active = new ConcurrentHashMap<>();

    Runs(Analyses analyses, StoredRuns runs, StoredAttempts attempts, RunQueue queue, RunEvents events, Clock clock) {
        this.analyses = analyses;
        this.runs = runs;
        this.attempts = attempts;
        this.queue = queue;
        this.events = events;
        this.clock = clock;
    }

    void onStart(@Observes StartupEvent event) {
        int interrupted = attempts.interruptAll(ENDED.formatted("/api/v1/runs/{id}"), Instant.now(clock));
        if (interrupted > 0) {
            LOG.infof("%d analyses were not made before the last end: they are interrupted", interrupted);
        }
    }

    /**
     * Asks an analyzer about what is published now: the kept answer, or one that is on its way.
     *
     * @throws Refusal for an unknown analyzer, parameter or value, or when too many wait
     */
    RunView ask(RunRequest request) {
        RunInputs inputs = analyses.inputs(request.analyzer(), request.parameters());
        return runs.view(inputs.id())
                .filter(known -> known.result().isPresent())
                .orElseGet(() -> start(inputs));
    }

    /**
     * Makes a run again, on the sessions that were recorded with it.
     *
     * @throws Refusal when the analyzer has changed, or sessions were withdrawn, or too many wait
     */
    RunView again(String id) {
        RunInputs inputs = inputs(id);
        analyses.mustBePossible(inputs);
        return start(inputs);
    }

    private synchronized RunView start(RunInputs inputs) {
        Optional<RunView> known = runs.view(inputs.id());
        if (known.isPresent() && known.get().isActive()) {
            return known.get();
        }
        queue.takePlace();
        RunJob job = recorded(inputs);
        active.put(inputs.id(), job);
        queue.put(job);
        return one(inputs.id());
    }

    private RunJob recorded(RunInputs inputs) {
        try {
            runs.add(inputs, Instant.now(clock));
            int number = attempts.add(inputs.id(), Instant.now(clock));
            return new RunJob(inputs, number, analyses, attempts, clock, () -> changed(inputs.id()));
        } catch (RuntimeException e) {
            queue.givePlaceBack();
            throw e;
        }
    }

    /**
     * Gives up the attempt that waits or is being made; a kept result stays.
     *
     * @throws Refusal when there is none
     */
    synchronized RunView cancel(String id) {
        RunView run = one(id);
        RunJob job = active.get(id);
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
            queue.remove(job);
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
