package org.tableweather.server.analysis;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.jboss.logging.Logger;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.plugin.PluginFailure;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.Refusal;

/** One attempt to make one run. */
final class RunJob implements Runnable {
    private static final Logger LOG = Logger.getLogger(RunJob.class);
    private static final long BETWEEN_TELLINGS_NANOS = 100_000_000;

    private final RunInputs inputs;
    private final int number;
    private final RunCaller caller;
    private final Analyses analyses;
    private final StoredAttempts attempts;
    private final Clock clock;
    private final Runnable changed;
    private volatile boolean cancelled;
    private volatile Optional<Progress> progress = Optional.empty();
    private long toldAt;
    /** The thread that concludes, while it does. */
    private Optional<Thread> concluding = Optional.empty();

    /**
     * An attempt.
     *
     * @param inputs what goes into the run
     * @param number of the attempt
     * @param caller who started it
     * @param changed called after every change of state or progress
     */
    RunJob(
            RunInputs inputs,
            int number,
            RunCaller caller,
            Analyses analyses,
            StoredAttempts attempts,
            Clock clock,
            Runnable changed) {
        this.inputs = inputs;
        this.number = number;
        this.caller = caller;
        this.analyses = analyses;
        this.attempts = attempts;
        this.clock = clock;
        this.changed = changed;
    }

    RunInputs inputs() {
        return inputs;
    }

    int number() {
        return number;
    }

    RunCaller caller() {
        return caller;
    }

    Optional<Progress> progress() {
        return progress;
    }

    /**
     * Has it stop: at the next session, at an analyzer's next word of progress, or at once where another process concludes, which
     * is ended. A conclusion here that tells nothing goes on to its end, and what it makes is dropped.
     */
    synchronized void cancel() {
        cancelled = true;
        concluding.ifPresent(Thread::interrupt);
    }

    private synchronized void enter(Progress step) {
        if (step.step().equals("concluding") && concluding.isEmpty()) {
            concluding = Optional.of(Thread.currentThread());
        }
    }

    /** From here on nothing interrupts the thread that made it. */
    private synchronized void leave() {
        concluding = Optional.empty();
        Thread.interrupted();
    }

    @Override
    public void run() {
        try {
            if (attempts.begin(inputs.id(), number, Instant.now(clock))) {
                changed.run();
                byte[] result = made();
                String sha256 = ETags.ofContent(result).getValue();
                attempts.finish(inputs.id(), number, result, sha256, Instant.now(clock));
            }
        } catch (CancellationException e) {
            LOG.debugf("run %s was cancelled", inputs.id());
        } catch (Refusal | PluginFailure e) {
            fail(e.getMessage());
        } catch (RuntimeException | Error e) {
            if (cancelled) {
                LOG.debugf(e, "run %s was cancelled", inputs.id());
                return;
            }
            LOG.errorf(e, "run %s failed", inputs.id());
            fail("the server failed: its log says more; tell the operator");
        } finally {
            progress = Optional.empty();
            changed.run();
        }
    }

    private byte[] made() {
        try {
            return AnalysisJson.bytes(analyses.run(inputs, this::tell));
        } finally {
            leave();
        }
    }

    private void tell(Progress now) {
        enter(now);
        if (cancelled) {
            throw new CancellationException(inputs.id());
        }
        if (isToBeTold(now)) {
            changed.run();
        }
    }

    private synchronized boolean isToBeTold(Progress now) {
        boolean newStep =
                progress.map(before -> !before.step().equals(now.step())).orElse(true);
        progress = Optional.of(now);
        boolean due = newStep || System.nanoTime() - toldAt > BETWEEN_TELLINGS_NANOS;
        if (due) {
            toldAt = System.nanoTime();
        }
        return due;
    }

    private void fail(String why) {
        attempts.end(inputs.id(), number, AttemptState.FAILED, why, Instant.now(clock));
    }
}
