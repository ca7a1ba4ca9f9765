package org.tableweather.cli;

import java.util.function.LongConsumer;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** A bar for long work, shown only to a person at a terminal. */
interface ProgressLine extends AutoCloseable, LongConsumer {

    /** Ends the line. */
    @Override
    void close();

    /**
     * A bar counting megabytes.
     *
     * @param terminal where it would be seen
     * @param task in a word or two
     * @param bytes how many there will be; −1 when not known
     */
    static ProgressLine ofBytes(Terminal terminal, String task, long bytes) {
        return of(terminal, task, bytes, " MB", 1 << 20);
    }

    /**
     * A bar counting thousands.
     *
     * @param terminal where it would be seen
     * @param task in a word or two
     * @param count how many there will be; −1 when not known
     */
    static ProgressLine ofCount(Terminal terminal, String task, long count) {
        return of(terminal, task, count, " k", 1000);
    }

    /**
     * A bar counting parts.
     *
     * @param terminal where it would be seen
     * @param task in a word or two
     * @param parts how many there will be
     */
    static ProgressLine ofParts(Terminal terminal, String task, long parts) {
        return of(terminal, task, parts, "", 1);
    }

    private static ProgressLine of(Terminal terminal, String task, long most, String unit, long unitSize) {
        if (!terminal.errIsTerminal()) {
            return new Silent();
        }
        ProgressBar bar = new ProgressBarBuilder()
                .setTaskName(task)
                .setInitialMax(most)
                .setUnit(unit, unitSize)
                .setUpdateIntervalMillis(200)
                .setStyle(terminal.unicode() ? ProgressBarStyle.UNICODE_BLOCK : ProgressBarStyle.ASCII)
                .setConsumer(new ConsoleProgressBarConsumer(System.err, terminal.columns()))
                .clearDisplayOnFinish()
                .build();
        return new Shown(bar);
    }

    /** No bar. */
    record Silent() implements ProgressLine {
        @Override
        public void accept(long bytes) {
            // nobody looks
        }

        @Override
        public void close() {
            // nothing shown
        }
    }

    /** A bar. */
    record Shown(ProgressBar bar) implements ProgressLine {
        @Override
        public void accept(long bytes) {
            bar.stepTo(bytes);
        }

        @Override
        public void close() {
            bar.close();
        }
    }
}
