package org.tableweather.analyzers.standard.catalogue.guard;

/**
 * The numbers of a session's attempts, whatever their shots.
 *
 * @param trials attempts
 * @param numbered different whole numbers among their ids
 * @param lowest of these; 0 when there are none
 * @param highest of these; 0 when there are none
 */
public record Numbering(long trials, long numbered, long lowest, long highest) {

    /** Numbers between the lowest and the highest that no attempt has. */
    public long missing() {
        return numbered == 0 ? 0 : highest - lowest + 1 - numbered;
    }
}
