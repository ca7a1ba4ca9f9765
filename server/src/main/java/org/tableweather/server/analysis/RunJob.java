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
    private final Analyses analyses;
    private final StoredAttempts attempts;
    private final Clock clock;
    private final Runnable changed;
    private volatile boolean cancelled;
    private volatile Optional<Progress> progress = Optional.empty();
    private long toldAt;

    /**
     * An attempt.
     *
     * @param inputs what goes into the run
     * @param number of the attempt
     * @param changed called after every change of state or progress
     */
    RunJob(RunInputs inputs, int number, Analyses analyses, StoredAttempts attempts, Clock clock, Runnable changed) {
        this.inputs = inputs;
        this.number = number;
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

    Optional<Progress> progress() {
        return progress;
    }

    /** Has it stop at the next session, or drop what it concludes. */
    void cancel() {
        cancelled = true;
    }

    @Override
    public void run() {
        try {
            if (attempts.begin(inputs.id(), number, Instant.now(clock))) {
                changed.run();
                byte[] result = AnalysisJson.bytes(analyses.run(inputs, this::tell));
                String sha256 = ETags.ofContent(result).getValue();
                attempts.finish(inputs.id(), number, result, sha256, Instant.now(clock));
            }
        } catch (CancellationException e) {
            LOG.debugf("run %s was cancelled", inputs.id());
        } catch (Refusal | PluginFailure e) {
            fail(e.getMessage());
        } catch (RuntimeException | Error e) {
            LOG.errorf(e, "run %s failed", inputs.id());
            fail("the server failed: its log says more; tell the operator");
        } finally {
            progress = Optional.empty();
            changed.run();
        }
    }

    private void tell(Progress now) {
        if (cancelled) {
            throw new CancellationException(inputs.id());
        }
        boolean newStep =
                progress.map(before -> !before.step().equals(now.step())).orElse(true);
        progress = Optional.of(now);
        if (newStep || System.nanoTime() - toldAt > BETWEEN_TELLINGS_NANOS) {
            toldAt = System.nanoTime();
            changed.run();
        }
    }

    private void fail(String why) {
        attempts.end(inputs.id(), number, AttemptState.FAILED, why, Instant.now(clock));
    }
}
