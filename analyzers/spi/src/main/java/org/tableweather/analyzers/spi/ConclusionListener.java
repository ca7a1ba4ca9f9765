package org.tableweather.analyzers.spi;

/**
 * Hears how far a conclusion is, and ends one that is no longer wanted. It changes no figure: an answer is the same whoever
 * listens.
 */
@FunctionalInterface
public interface ConclusionListener {

    /** For those who want the answer alone. */
    ConclusionListener NONE = (what, done, total) -> {};

    /**
     * Called by an analyzer now and then, from any thread, some times a second at best; it costs little.
     *
     * @param what is being done, in a word or two: {@code bootstrap}
     * @param done how many parts of it
     * @param total parts in all
     * @throws java.util.concurrent.CancellationException when the conclusion is no longer wanted: let it through
     */
    void at(String what, int done, int total);
}
