package org.tableweather.analyzers.host.plugin;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.tableweather.analyzers.spi.ConclusionListener;

/** One plugin process, seen from its host. Not for two threads at a time. */
final class PluginChild implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 10;
    private static final int REMEMBERED = 500;

    private final String jarName;
    private final PluginLimits limits;
    private final Process process;
    private final ExecutorService threads;
    private final Future<String> complaints;

    private PluginChild(String jarName, PluginLimits limits, Process process) {
        this.jarName = jarName;
        this.limits = limits;
        this.process = process;
        this.threads = Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "plugin " + jarName);
            thread.setDaemon(true);
            return thread;
        });
        this.complaints = threads.submit(() -> firstOf(process.getErrorStream()));
    }

    /** Starts it: a heap of its own, no environment, the working directory for temporary files. */
    static PluginChild start(Path jar, String sha256, PluginLimits limits) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + limits.memoryMb() + "m",
                "-XX:MaxMetaspaceSize=128m",
                "-XX:MaxDirectMemorySize=16m",
                "-XX:+UseSerialGC",
                "-XX:-UsePerfData",
                "-XX:-CreateCoredumpOnCrash",
                "-Djava.awt.headless=true",
                "-Duser.language=en",
                "-Duser.country=US",
                "-Duser.timezone=UTC",
                "-Dfile.encoding=UTF-8",
                "-cp",
                ChildClassPath.text(),
                PluginProcess.class.getName(),
                jar.toAbsolutePath().toString(),
                sha256,
                String.valueOf(limits.time().toMillis())));
        // passwords of the host stand in its environment
        builder.environment().clear();
        builder.directory(Path.of(System.getProperty("java.io.tmpdir")).toFile());
        return new PluginChild(String.valueOf(jar.getFileName()), limits, builder.start());
    }

    /**
     * Asks, and waits no longer than a run may take.
     *
     * @param listener hears how far the process is; what it throws ends the process
     * @throws PluginFailure when no reply comes; the process has ended then
     */
    Reply ask(byte[] question, ConclusionListener listener) {
        Future<Optional<Reply>> reply = threads.submit(() -> {
            Frames.write(process.getOutputStream(), question);
            Optional<Reply> next = next();
            while (next.flatMap(Reply::word).isPresent()) {
                next.flatMap(Reply::word).get().tell(listener);
                next = next();
            }
            return next;
        });
        try {
            return reply.get(limits.time().toMillis(), TimeUnit.MILLISECONDS).orElseThrow(this::endedByItself);
        } catch (TimeoutException e) {
            close();
            throw new PluginFailure(jarName + " took longer than " + limits.timeInWords() + " and was ended");
        } catch (InterruptedException e) {
            close();
            Thread.currentThread().interrupt();
            throw new PluginFailure(jarName + " was ended: the run was cancelled");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof CancellationException cancelled) {
                close();
                throw cancelled;
            }
            throw endedByItself();
        }
    }

    private Optional<Reply> next() throws IOException {
        Optional<byte[]> frame = Frames.read(process.getInputStream());
        return frame.isEmpty() ? Optional.empty() : Optional.of(PluginJson.MAPPER.readValue(frame.get(), Reply.class));
    }

    private PluginFailure endedByItself() {
        String how = "replied with something else than a reply";
        try {
            if (process.waitFor(1, TimeUnit.SECONDS)) {
                how = "ended its process (exit code " + process.exitValue() + ") without a reply"
                        + said(complaints.get(1, TimeUnit.SECONDS));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException e) {
            // then it is not known what it said
        }
        close();
        return new PluginFailure(jarName + " " + how);
    }

    private static String said(String text) {
        return text.isBlank() ? "" : ": " + text.strip().replaceAll("\\s+", " ");
    }

    /** Reads all, so that the process never waits for a reader, and keeps the beginning. */
    private static String firstOf(InputStream stream) throws IOException {
        String first = new String(stream.readNBytes(REMEMBERED), StandardCharsets.UTF_8);
        byte[] part = new byte[1 << 13];
        int read = stream.read(part);
        while (read >= 0) {
            read = stream.read(part);
        }
        return first;
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Ends it and whatever it started. */
    @Override
    public void close() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        try {
            process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        threads.shutdownNow();
    }
}
