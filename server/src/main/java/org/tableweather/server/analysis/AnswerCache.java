package org.tableweather.server.analysis;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/**
 * The answers that were asked for last, by the name of all that went into them: analyzer, version, parameters,
 * sessions ({@link org.tableweather.analyzers.host.RunId}). So a kept answer is never out of date. A question that is asked while its
 * answer is being made waits for that answer; one that fails is not kept. Nothing is kept over a restart.
 */
final class AnswerCache {
    private final long mostBytes;
    private final Map<String, CompletableFuture<Answer>> answers = new LinkedHashMap<>(16, 0.75f, true);
    private long bytes;

    /**
     * Starts empty.
     *
     * @param mostBytes of all bodies together; beyond it those that were not asked for longest go
     */
    AnswerCache(long mostBytes) {
        this.mostBytes = mostBytes;
    }

    /**
     * The answer of this name.
     *
     * @param name of all that goes into it
     * @param make makes it when it is not there
     */
    Answer get(String name, Supplier<Answer> make) {
        CompletableFuture<Answer> mine = new CompletableFuture<>();
        CompletableFuture<Answer> there = begun(name, mine);
        return there == null ? made(name, mine, make) : waitedFor(there);
    }

    private synchronized CompletableFuture<Answer> begun(String name, CompletableFuture<Answer> mine) {
        return answers.putIfAbsent(name, mine);
    }

    private Answer made(String name, CompletableFuture<Answer> mine, Supplier<Answer> make) {
        try {
            Answer answer = make.get();
            mine.complete(answer);
            keep(answer);
            return answer;
        } catch (RuntimeException | Error e) {
            forget(name);
            mine.completeExceptionally(e);
            throw e;
        }
    }

    private static Answer waitedFor(CompletableFuture<Answer> answer) {
        try {
            return answer.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw e;
        }
    }

    /** Forgets the answer of this name, if there is one. */
    synchronized void forget(String name) {
        CompletableFuture<Answer> known = answers.remove(name);
        if (known != null && known.isDone()) {
            bytes -= known.join().body().length;
        }
    }

    private synchronized void keep(Answer answer) {
        bytes += answer.body().length;
        Iterator<CompletableFuture<Answer>> oldest = answers.values().iterator();
        while (bytes > mostBytes && oldest.hasNext()) {
            CompletableFuture<Answer> next = oldest.next();
            if (next.isDone()) {
                bytes -= next.join().body().length;
                oldest.remove();
            }
        }
    }
}
