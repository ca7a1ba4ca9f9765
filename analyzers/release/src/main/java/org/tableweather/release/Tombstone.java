package org.tableweather.release;

import java.time.LocalDate;

/**
 * What is left of a contribution that was withdrawn: it stays in the releases that have it, and is in no later one.
 *
 * @param contribution its id
 * @param date of the withdrawal
 * @param reason in words, as stated; may be empty
 */
public record Tombstone(String contribution, LocalDate date, String reason) {}
