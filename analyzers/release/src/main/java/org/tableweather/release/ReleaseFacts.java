package org.tableweather.release;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a release says of itself beside its data: nothing is taken from a clock or the machine.
 *
 * @param number of the release, from 1
 * @param title in words
 * @param date of the release
 * @param previous manifest of the release before; empty for the first
 * @param tombstones of all contributions withdrawn so far
 */
public record ReleaseFacts(
        int number, String title, LocalDate date, Optional<Manifest> previous, List<Tombstone> tombstones) {
    public ReleaseFacts {
        if (number < 1) {
            throw new IllegalArgumentException("number " + number + " < 1: releases are counted from 1");
        }
        if (title.isBlank()) {
            throw new IllegalArgumentException("the title is empty: say in words what is released");
        }
        int least = previous.map(Manifest::number).orElse(0);
        if (number <= least) {
            throw new IllegalArgumentException(
                    "number " + number + " does not come after the previous release, number " + least);
        }
        tombstones = List.copyOf(tombstones);
    }
}
