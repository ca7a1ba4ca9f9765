package org.tableweather.cluster;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskEnd;

/** Tells how far a run is, about every tenth part. */
final class Progress extends SparkListener {
    private static final int PARTS = 10;

    private final int tasks;
    private final Consumer<String> talk;
    private final AtomicInteger done = new AtomicInteger();

    /** Of so many tasks. */
    Progress(int tasks, Consumer<String> talk) {
        this.tasks = tasks;
        this.talk = talk;
    }

    @Override
    public void onTaskEnd(SparkListenerTaskEnd task) {
        if (!task.taskInfo().successful()) {
            return;
        }
        int now = done.incrementAndGet();
        if (now * PARTS / tasks > (now - 1) * PARTS / tasks) {
            talk.accept("summarised " + now + " of " + tasks + " room groups");
        }
    }
}
