package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/** Who watches which run. */
@ApplicationScoped
class RunEvents {
    /** Streams at a time: each keeps a connection open. */
    private static final int MOST = 200;

    private final Map<String, List<Consumer<RunView>>> watchers = new ConcurrentHashMap<>();
    private final AtomicInteger count = new AtomicInteger();

    boolean isFull() {
        return count.get() >= MOST;
    }

    void add(String run, Consumer<RunView> watcher) {
        watchers.compute(run, (id, known) -> {
            List<Consumer<RunView>> all = known == null ? new CopyOnWriteArrayList<>() : known;
            all.add(watcher);
            count.incrementAndGet();
            return all;
        });
    }

    void remove(String run, Consumer<RunView> watcher) {
        watchers.computeIfPresent(run, (id, all) -> {
            if (all.remove(watcher)) {
                count.decrementAndGet();
            }
            return all.isEmpty() ? null : all;
        });
    }

    boolean isWatched(String run) {
        return watchers.containsKey(run);
    }

    /** Tells those who watch a run what has become of it. */
    void tell(RunView run) {
        watchers.getOrDefault(run.id(), List.of()).forEach(watcher -> watcher.accept(run));
    }
}
