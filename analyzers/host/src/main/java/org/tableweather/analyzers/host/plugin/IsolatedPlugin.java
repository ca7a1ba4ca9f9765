package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;

/**
 * A jar whose analyzers never run in the host's process. Sessions are summarised one after the other in one process, which
 * ends when nothing is asked for a while; each conclusion has a process of its own. One process at a time.
 */
public final class IsolatedPlugin {
    private static final long IDLE_SECONDS = 10;
    private static final ScheduledExecutorService CLOSER = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "idle plugins");
        thread.setDaemon(true);
        return thread;
    });

    private final Path jar;
    private final String sha256;
    private final PluginLimits limits;
    private final ReentrantLock lock = new ReentrantLock(true);
    private PluginChild kept;
    private long asked;

    private IsolatedPlugin(Path jar, String sha256, PluginLimits limits) {
        this.jar = jar;
        this.sha256 = sha256;
        this.limits = limits;
    }

    /**
     * The jar's analyzers. Each bears what the jar does: a {@link PluginFailure} says what went wrong.
     *
     * @param jar which
     * @param sha256 of the jar, hex; another content never runs
     * @param limits of each run
     * @throws PluginRefused when the jar cannot be used
     */
    public static List<Analyzer<?>> load(Path jar, String sha256, PluginLimits limits) throws PluginRefused {
        IsolatedPlugin plugin = new IsolatedPlugin(jar, sha256, limits);
        Reply reply;
        try {
            reply = plugin.askOnce(Question.describe(), ConclusionListener.NONE);
        } catch (PluginFailure failure) {
            throw new PluginRefused(failure.getMessage(), "tell the jar's author", failure);
        }
        if (reply.refused() != null || reply.analyzers() == null) {
            String why = reply.refused() == null ? jar.getFileName() + " did not say what is in it" : reply.refused();
            throw new PluginRefused(why, String.valueOf(reply.remedy()));
        }
        List<Analyzer<?>> analyzers = new ArrayList<>();
        for (AnalyzerInfo info : reply.analyzers()) {
            PluginJar.mustBeNamed(plugin.jarName(), info);
            analyzers.add(new IsolatedAnalyzer(plugin, info));
        }
        return analyzers;
    }

    String jarName() {
        return String.valueOf(jar.getFileName());
    }

    /** Asks a process that lives for this question alone; it ends, too, when the thread that waits is interrupted. */
    Reply askOnce(Question question, ConclusionListener listener) {
        return alone(() -> {
            closeKept();
            try (PluginChild child = start()) {
                return child.ask(written(question), listener);
            }
        });
    }

    /** Asks a process that is kept for the next question. */
    Reply askKept(Question question) {
        return alone(() -> {
            if (kept == null || !kept.isAlive()) {
                closeKept();
                kept = start();
            }
            Reply reply = kept.ask(written(question), ConclusionListener.NONE);
            long now = ++asked;
            CLOSER.schedule(() -> closeIfIdleSince(now), IDLE_SECONDS, TimeUnit.SECONDS);
            return reply;
        });
    }

    private Reply alone(Supplier<Reply> work) {
        try {
            lock.lockInterruptibly();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new PluginFailure(jarName() + " was not asked: the run was cancelled", e);
        }
        try {
            return work.get();
        } finally {
            lock.unlock();
        }
    }

    private PluginChild start() {
        try {
            return PluginChild.start(jar, sha256, limits);
        } catch (IOException e) {
            throw new PluginFailure("no process can be started for " + jarName() + ": " + e.getMessage(), e);
        }
    }

    private static byte[] written(Question question) {
        try {
            return PluginJson.MAPPER.writeValueAsBytes(question);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a question is made of plain records", e);
        }
    }

    private void closeIfIdleSince(long question) {
        lock.lock();
        try {
            if (asked == question) {
                closeKept();
            }
        } finally {
            lock.unlock();
        }
    }

    private void closeKept() {
        if (kept != null) {
            kept.close();
            kept = null;
        }
    }
}
